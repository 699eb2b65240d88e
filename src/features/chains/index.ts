export { readChain } from './chains.ts';
export { chainRoutes } from './routes.ts';
export { findingsFor } from './versions.ts';
