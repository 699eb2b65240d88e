export { copyContent } from './copy-content.ts';
export { openEvidenceStore, pathOfContent } from './local-disk.ts';
export type {
  ByteRange,
  Condition,
  Content,
  EvidenceStore,
  Received,
  ReceivedFile,
  StoredContent,
  TooLarge,
} from './store.ts';
