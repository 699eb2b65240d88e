export { openEvidenceStore } from './local-disk.ts';
export type {
  ByteRange,
  Condition,
  Content,
  EvidenceStore,
  Received,
  ReceivedFile,
  TooLarge,
} from './store.ts';
