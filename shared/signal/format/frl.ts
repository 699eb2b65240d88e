import { horizontalBlankingPx, type Timing, totalWidthPx } from '../timings/index.ts';
import {
  bitRateForCharactersGbps,
  type FrlRate,
  frlBitRateGbps,
  frlOverhead,
  frlRates,
} from './frl-rates.ts';
import { depthFactor, pixelsPerCharacter, type Sampling } from './tmds.ts';

/* The capacity method of HDMI 2.1, clause 6.5.6.2: constants from memory; open display drivers use the same. */
const pixelClockTolerance = 0.005;
const audioClockTolerance = 0.001;
/** Tri-bytes of picture that may wait in the sink's buffer for blanking to make room. */
export const maxBorrowedTriBytes = 400;
/** Audio clock regeneration packets a second, of which the method counts twice this. */
const clockPacketsHz = 1500;
/** Characters of a data island packet, and of what surrounds the packets of a line. */
const charactersPerPacket = 32;
/** Unused blanking is sent as runs: of eight characters seven are saved, but for a few at its edges. */
const runSaving = 7 / 8;
const runEdgeCharacters = 7;
const runMarginCharacters = 4;
/** Two tri-bytes of picture fill three characters; a tri-byte of blanking fills one. */
export const charactersPerActiveTriByte = 3 / 2;

/** Audio packets a second: eight channels at 192 kHz, a packet each sample. Assumed, as the heaviest usual load. */
export const assumedAudioPacketsHz = 192_000;

/** Seconds that the shortest line lasts, with the pixel clock at its upper tolerance. */
export const shortestLineS = (timing: Timing): number =>
  totalWidthPx(timing) / (timing.pixelClockKHz * 1000 * (1 + pixelClockTolerance));

/** Audio packets that a line has to have room for. */
export const audioPacketsPerLine = (timing: Timing, packetsHz: number): number =>
  Math.ceil((packetsHz + 2 * clockPacketsHz) * (1 + audioClockTolerance) * shortestLineS(timing));

/** Characters that the least data island with so many audio packets takes from a line's blanking. */
export const leastBlankingCharacters = (packets: number): number => charactersPerPacket * (1 + packets);

/** What one line asks of the link. */
export type LineLoad = {
  activeTriBytes: number;
  blankTriBytes: number;
  /** FRL characters of the whole line, after runs in the blanking are shortened. */
  characters: number;
};

/** The load of one line, with picture and blanking packed separately; null where the sampling can't be sent. */
export function lineLoad(
  timing: Timing,
  sampling: Sampling,
  audioPacketsHz = assumedAudioPacketsHz,
): LineLoad | null {
  const depth = depthFactor(sampling);
  if (depth === null) return null;
  const perPixel = depth / pixelsPerCharacter(sampling);
  const activeTriBytes = Math.ceil(timing.widthPx * perPixel);
  const blanking = horizontalBlankingPx(timing) * perPixel;
  const blankTriBytes = Math.ceil(blanking);
  const island = leastBlankingCharacters(audioPacketsPerLine(timing, audioPacketsHz));
  const free = Math.max(Math.floor(blanking - island - runEdgeCharacters), 0);
  const saved = Math.max(Math.floor(runSaving * free - runMarginCharacters), 0);
  const characters = Math.ceil(charactersPerActiveTriByte * activeTriBytes) + blankTriBytes - saved;
  return { activeTriBytes, blankTriBytes, characters };
}

export type FrlNeed = {
  /** The least nominal bit rate of all lanes, coding and overheads included. */
  bitRateGbps: number;
  /** What asks for it: the line as a whole, its picture within the buffer's reach, or its blanking. */
  bound: 'line' | 'picture' | 'blanking';
};

/**
 * The least bit rate that carries a picture uncompressed on a fixed rate link of three or four lanes; null where the
 * sampling can't be sent. A rate carries it exactly when it is at least this.
 *
 * Source: HDMI 2.1, clause 6.5.6.2 (from memory): a line's characters within the line after overheads; its picture
 * within its own time, or late by no more than the buffer holds; its blanking within its own time.
 */
export function frlNeed(
  timing: Timing,
  sampling: Sampling,
  lanes: FrlRate['lanes'],
  audioPacketsHz = assumedAudioPacketsHz,
): FrlNeed | null {
  const load = lineLoad(timing, sampling, audioPacketsHz);
  if (load === null) return null;
  const { activeTriBytes, blankTriBytes, characters } = load;
  const lineS = shortestLineS(timing);
  const pictureS = (lineS * timing.widthPx) / totalWidthPx(timing);
  const lateS = (maxBorrowedTriBytes * lineS) / (activeTriBytes + blankTriBytes);
  const payload = 1 - frlOverhead(lanes);
  const asked: [FrlNeed['bound'], number][] = [
    ['line', Math.ceil(characters / payload) / lineS],
    ['picture', (charactersPerActiveTriByte * activeTriBytes) / payload / (pictureS + lateS)],
    ['blanking', blankTriBytes / payload / (lineS - pictureS)],
  ];
  const [bound, charactersHz] = asked.reduce((most, each) => (each[1] > most[1] ? each : most));
  return { bitRateGbps: bitRateForCharactersGbps(charactersHz), bound };
}

/** Whether a fixed rate link at this rate carries the picture uncompressed. */
export function frlCarries(timing: Timing, sampling: Sampling, rate: FrlRate): boolean {
  const need = frlNeed(timing, sampling, rate.lanes);
  return need !== null && need.bitRateGbps <= frlBitRateGbps(rate);
}

/** What a picture needs uncompressed on three and on four lanes; null where the sampling can't be sent. */
export type FrlNeeds = { threeLanes: FrlNeed; fourLanes: FrlNeed };

export function frlNeeds(timing: Timing, sampling: Sampling): FrlNeeds | null {
  const threeLanes = frlNeed(timing, sampling, 3);
  const fourLanes = frlNeed(timing, sampling, 4);
  return threeLanes && fourLanes && { threeLanes, fourLanes };
}

/** The slowest of the six rates that carries so much uncompressed; null when none does. */
export const leastFrlRate = (needs: Record<keyof FrlNeeds, Pick<FrlNeed, 'bitRateGbps'>>): FrlRate | null =>
  frlRates.find((rate) => {
    const need = rate.lanes === 3 ? needs.threeLanes : needs.fourLanes;
    return need.bitRateGbps <= frlBitRateGbps(rate);
  }) ?? null;
