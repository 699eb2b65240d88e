export { ctaTimings, hdmiVicTiming, hdmiVicToVic, vicTiming } from './cta-861.ts';
export { type CvtBlanking, type CvtRequest, cvtBlankings, cvtTiming } from './cvt.ts';
export { dmtTiming, dmtTimings } from './dmt.ts';
export { type FoundTiming, findTiming, type Picture, type TimingSource } from './find-timing.ts';
export { type GtfRequest, gtfTiming } from './gtf.ts';
export { ovtRates, ridTiming } from './ovt.ts';
export { type TableRow, timingsById } from './table-row.ts';
export {
  atPixelClock,
  type Blanking,
  blankingTotal,
  framePacked,
  horizontalBlankingPx,
  lineRateKHz,
  refreshHz,
  type Timing,
  totalLines,
  totalWidthPx,
} from './timing.ts';
