export { evidenceAtChain } from './chain-evidence.read.ts';
export { checkFiles } from './check-files.ts';
export { eraseFromEvidence } from './erase.ts';
export {
  type EvidenceRow,
  edidHexOf,
  evidenceItemOf,
  evidenceOf,
  evidenceOfKind,
  findEvidence,
  logReadingOf,
  withFile,
} from './evidence-item.ts';
export { evidencePath, extensionOf, safeStem } from './file-names.ts';
export { storedBytes } from './stored-bytes.ts';
export { insertEvidence, insertFile, markWithdrawn } from './write.ts';
