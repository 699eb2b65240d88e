export { type EvidenceRow, evidenceItemOf, evidenceOf, findEvidence, withFile } from './evidence-item.ts';
export { evidencePath, extensionOf, safeStem } from './file-names.ts';
