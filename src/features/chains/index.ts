export { type ChainVersionDocument, changesOf, versionDocumentsOf } from './chain-row.ts';
export { describeAsLeft, lockChain, readChain, siteOfChain } from './chains.ts';
export { chainRoutes } from './routes.ts';
export { versionsOf } from './versions.read.ts';
export { findingsFor } from './versions.ts';
