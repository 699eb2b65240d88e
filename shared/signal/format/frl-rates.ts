import type { SignalMode } from '../../contract/chain.ts';

export type FrlRate = Pick<Extract<SignalMode, { kind: 'frl' }>, 'lanes' | 'gbpsPerLane'>;

/** The six rates of a fixed rate link, slowest first: 9, 18, 24, 32, 40 and 48 Gbit/s. HDMI 2.1, 6.4 (from memory). */
export const frlRates: readonly FrlRate[] = [
  { lanes: 3, gbpsPerLane: 3 },
  { lanes: 3, gbpsPerLane: 6 },
  { lanes: 4, gbpsPerLane: 6 },
  { lanes: 4, gbpsPerLane: 8 },
  { lanes: 4, gbpsPerLane: 10 },
  { lanes: 4, gbpsPerLane: 12 },
];

/** Of all lanes together, coding included. */
export const frlBitRateGbps = ({ lanes, gbpsPerLane }: FrlRate): number => lanes * gbpsPerLane;

/* Overheads and tolerances of the link: HDMI 2.1, clause 6.5.6.2, from memory; open display drivers use the same. */
const charactersPerBlock = 510;
const blocksPerSuperBlock = 4;
const parityCharactersPerBlock = 8;
/** Characters that say what a block holds: two and a half on average in a super block. */
const mapCharactersPerSuperBlock = 2.5;
const overheadMargin = 0.003;
const bitRateTolerance = 300e-6;
/** 16 bits of payload in 18 on the line. */
const bitsPerFrlCharacter = 18;

/** Share of the characters that carry no payload, 0..1: 2.136 % on three lanes, 2.184 % on four. */
export function frlOverhead(lanes: number): number {
  const perSuperBlock = blocksPerSuperBlock * charactersPerBlock + lanes;
  const start = lanes;
  const parity = parityCharactersPerBlock * blocksPerSuperBlock;
  return (start + parity + mapCharactersPerSuperBlock) / perSuperBlock + overheadMargin;
}

/** Characters a second that a bit rate surely gives, of all lanes together. */
export const surelyCharactersHz = (bitRateGbps: number): number =>
  (bitRateGbps * 1e9 * (1 - bitRateTolerance)) / bitsPerFrlCharacter;

/** The nominal bit rate that surely gives so many characters a second. */
export const bitRateForCharactersGbps = (charactersHz: number): number =>
  (charactersHz * bitsPerFrlCharacter) / (1 - bitRateTolerance) / 1e9;
