export { type Sound, soundFits } from './audio.ts';
export { type CompressedFit, type CompressionCapabilities, compressedFit } from './compression.ts';
export {
  assumedAudioPacketsHz,
  type FrlNeed,
  type FrlNeeds,
  frlCarries,
  frlNeed,
  frlNeeds,
  leastFrlRate,
  lineLoad,
} from './frl.ts';
export { type FrlRate, frlBitRateGbps, frlOverhead, frlRates } from './frl-rates.ts';
export { type FormatNeed, formatNeed } from './needs.ts';
export {
  maxTmdsCharacterRateMHz,
  type Sampling,
  scramblingAboveMHz,
  type TmdsNeed,
  tmdsBitRateGbps,
  tmdsNeed,
} from './tmds.ts';
