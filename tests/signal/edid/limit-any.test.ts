import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type EdidLimits,
  encodeEdid,
  limitEdid,
  type SinkCapabilities,
  type SinkFormat,
  sinkCapabilities,
} from '../../../shared/signal/edid/index.ts';
import { edid } from './arbitrary-edid.ts';
import { anyLimits } from './arbitrary-limits.ts';
import { limitedAsSeen } from './limited-as-seen.ts';

/** A format by its raster; 18-byte timings know the clock to 10 kHz only. */
const formatKey = ({ timing }: SinkFormat) =>
  `${timing.widthPx}x${timing.heightPx}${timing.interlaced ? 'i' : 'p'} ${Math.floor(timing.pixelClockKHz / 10)}`;
/** What every sink must take, and may stand first where nothing else fits. */
const substitute = '640x480p 2517';

describe('limiting any EDID', () => {
  it('never raises anything and keeps to the limits', () => {
    fc.assert(
      fc.property(edid, anyLimits, (display, limits) => {
        const before = sinkCapabilities(display);
        const after = sinkCapabilities(limitedAsSeen(display, limits));
        expectNoMore(before, after);
        expectKept(after, limits);
      }),
      { numRuns: 400 },
    );
  });

  it('twice is the same as once', () => {
    fc.assert(
      fc.property(edid, anyLimits, (display, limits) => {
        const once = limitEdid(display, limits);
        expect(encodeEdid(limitEdid(once, limits))).toEqual(encodeEdid(once));
      }),
      { numRuns: 200 },
    );
  });
});

function expectNoMore(before: SinkCapabilities, after: SinkCapabilities): void {
  expect(after.maxTmdsCharacterRateMHz).toBeLessThanOrEqual(before.maxTmdsCharacterRateMHz);
  expect(bits(after.frl)).toBeLessThanOrEqual(bits(before.frl));
  expect(bits(after.compression?.maxRate ?? null)).toBeLessThanOrEqual(
    bits(before.compression?.maxRate ?? null),
  );
  const taken = new Set(before.formats.map(formatKey));
  expect(after.formats.map(formatKey).filter((key) => !taken.has(key) && key !== substitute)).toEqual([]);
  const in420 = new Set(before.formats.filter((format) => format.in420 !== 'no').map(formatKey));
  expect(after.formats.filter((format) => format.in420 !== 'no' && !in420.has(formatKey(format)))).toEqual(
    [],
  );
  for (const key of ['eotfs', 'colorimetry', 'speakers', 'vendorVideoOuis', 'dynamicMetadataTypes'] as const)
    expect(isPart<string | number>(after[key], before[key])).toBe(true);
  for (const encoding of ['rgb', 'ycbcr444', 'ycbcr422', 'ycbcr420'] as const)
    expect(isPart(after.depths[encoding], before.depths[encoding])).toBe(true);
  for (const audio of after.audio) expect(before.audio.some((had) => covers(had, audio))).toBe(true);
}

function expectKept(after: SinkCapabilities, limits: EdidLimits): void {
  const { maxTmdsCharacterRateMHz: rate, dropFrl, drop420, dropHdr, stereoOnly } = limits;
  if (rate !== undefined && after.hdmi && after.tmdsRateStated)
    expect(after.maxTmdsCharacterRateMHz).toBeLessThanOrEqual(rate);
  if (rate !== undefined && after.frl === null)
    expect(
      after.formats.filter(
        ({ timing, in420 }) => timing.pixelClockKHz / (in420 === 'only' ? 2000 : 1000) > rate,
      ),
    ).toEqual([]);
  if (dropFrl) expect(after).toMatchObject({ frl: null, compression: null });
  if (drop420) expect(after.formats.every(({ in420 }) => in420 === 'no')).toBe(true);
  if (dropHdr) expect(after).toMatchObject({ eotfs: [], dynamicMetadataTypes: [], vendorVideoOuis: [] });
  if (stereoOnly)
    expect(after.audio.every((audio) => audio.format === 'Linear PCM' && (audio.channels ?? 9) <= 2)).toBe(
      true,
    );
}

const bits = (rate: { lanes: number; gbpsPerLane: number } | null): number =>
  rate ? rate.lanes * rate.gbpsPerLane : 0;
const isPart = <T>(part: readonly T[], whole: readonly T[]): boolean =>
  part.every((item) => whole.includes(item));

type Audio = SinkCapabilities['audio'][number];
const covers = (had: Audio, now: Audio): boolean =>
  had.format === now.format &&
  (had.channels ?? 0) >= (now.channels ?? 0) &&
  isPart(now.ratesKHz, had.ratesKHz) &&
  isPart(now.sampleSizes, had.sampleSizes);
