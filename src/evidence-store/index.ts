export { openEvidenceStore } from './local-disk.ts';
export type { ByteRange, Content, EvidenceStore, Received, ReceivedFile, TooLarge } from './store.ts';
