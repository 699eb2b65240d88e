export { demandOf } from './demand.ts';
export type { ContentDemand, Hop } from './hop.ts';
export {
  type ChainProtection,
  cablesBehindVersionMessage,
  chainProtection,
  type DisplayProtection,
  type SuspectCable,
} from './protection.ts';
export { limitsOf1x, limitsOf2x, type SourceTopology, type TopologyLimit } from './topology.ts';
