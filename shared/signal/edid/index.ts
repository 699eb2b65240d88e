export {
  type DepthsByEncoding,
  type Eotf,
  type SinkAudio,
  type SinkCapabilities,
  sinkCapabilities,
} from './capabilities.ts';
export {
  type ComparePerspective,
  compareEdids,
} from './compare.ts';
export { type DecodedEdid, decodeEdid, mostBlocks } from './decode.ts';
export type { EdidLimits } from './edit/edid-limits.ts';
export { limitEdid } from './edit/limit-edid.ts';
export { encodeEdid } from './encode.ts';
export { type FormatSource, type SinkFormat, sinkFormats } from './formats.ts';
export { type EdidInput, readEdidInput, readEdidText } from './input/read-input.ts';
export { withoutNeedlessBytes } from './needless-bytes.ts';
export type { EdidProblem, Severity } from './problems.ts';
export { rasterOfDetailed, rasterOfDisplayId } from './raster.ts';
export { readableText } from './readable-text.ts';
export { type SinkSummary, summariseSink } from './sink-summary.ts';
export { edidFactsAsToday } from './stored-facts.ts';
export {
  type CtaSummary,
  type EdidSummary,
  type HdmiForumSummary,
  type HdmiSummary,
  type HdrStaticSummary,
  summarise,
  type TimingSummary,
} from './summary.ts';
export type { BlockMap, Edid, ExtensionBlock, OtherExtension } from './tree.ts';
export {
  audioName,
  encodingNamesWithDepths,
  eotfNames,
  formatName,
  frlName,
  tmdsRateName,
} from './wording.ts';
