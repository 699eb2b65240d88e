import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decodeEdid,
  type Edid,
  type EdidLimits,
  encodeEdid,
  limitEdid,
  summarise,
} from '../../shared/signal/edid/index.ts';
import { display } from '../signal/edid/arbitrary-display.ts';
import { referenceEdid } from '../signal/edid/arbitrary-edid.ts';
import { factsFromReference, referenceFailures, referenceOutput } from './edid-decode-output.ts';
import { formatsFromReference, formatsOf } from './edid-formats.ts';

/*
 * Against Debian's edid-decode, which nobody here wrote: displays that could be sold, made at random, every field and every
 * format of them; and that what a limit makes of them breaks no rule that the display itself keeps.
 */

/** Random, but the same in every run, so that a difference can be looked at. */
const displays = fc.sample(display, { numRuns: 400, seed: 861 });

/** What is in an EDID and in which order, without any figure. */
const shapeOf = ({ base, extensions }: Edid): string =>
  JSON.stringify([
    base.revision,
    base.descriptors.map(({ kind }) => kind),
    extensions.map((extension) => {
      if (extension.kind === 'cta')
        return [extension.dataBlocks.map(({ kind }) => kind), extension.timings.length];
      return extension.kind === 'displayId' ? [extension.version, extension.blocks.length] : [];
    }),
  ]);

/** Formats that one has and the other has not, and why; the list must not grow. */
const explained = [
  {
    why:
      'The standard timing 1024x768 at 70 Hz is the DMT of the code 614Ah (VESA DMT 1.13, id 11h, 75 MHz): the reference ' +
      'has no code for it in its table, and works out a GTF timing in its place.',
    ours: '1024x768 70.069 75000',
    reference: '1024x768 70.000 76160',
  },
];

function differencesOf(ours: readonly string[], theirs: readonly string[]): string[] {
  const known = explained.filter(({ reference }) => theirs.includes(reference));
  for (const { ours: own } of known) expect(ours).toContain(own);
  return [
    ...ours.filter((line) => !theirs.includes(line) && !known.some((one) => one.ours === line)),
    ...theirs.filter((line) => !ours.includes(line) && !known.some((one) => one.reference === line)),
  ];
}

describe('displays as they could be sold, against edid-decode', () => {
  it('are more than 300 that differ in what is in them', () => {
    expect(new Set(displays.map(shapeOf)).size).toBeGreaterThan(300);
    expect(explained).toHaveLength(1);
  });

  it('have every fact that it reads, and every format', () => {
    let formats = 0;
    let known = 0;
    for (const tree of displays) {
      const bytes = encodeEdid(tree);
      const output = referenceOutput(bytes) ?? '';
      const decoded = decodeEdid(bytes);
      const { ok: _ok, problems: _problems, ...facts } = summarise(decoded);
      expect(facts).toEqual(factsFromReference(output));
      const theirs = formatsFromReference(output);
      expect(differencesOf(decoded.edid ? formatsOf(decoded.edid) : [], theirs)).toEqual([]);
      formats += theirs.length;
      known += explained.filter(({ reference }) => theirs.includes(reference)).length;
    }
    expect(formats).toBeGreaterThan(5000);
    expect(known).toBeGreaterThan(0);
  });
});

const anyLimits: fc.Arbitrary<EdidLimits> = fc.record(
  {
    maxTmdsCharacterRateMHz: fc.constantFrom(75, 148.5, 165, 225, 297, 300, 340, 594, 600),
    dropFrl: fc.boolean(),
    maxFrlGbps: fc.constantFrom(9, 18, 24, 40),
    dropCompression: fc.boolean(),
    drop420: fc.boolean(),
    dropHdr: fc.boolean(),
    dropVrr: fc.boolean(),
    stereoOnly: fc.boolean(),
  },
  { requiredKeys: [] },
);
const limits = fc.sample(anyLimits, { numRuns: displays.length, seed: 2026 });

/** Sizes of all 18-byte timings, in the order of the EDID. */
const imageSizes = ({ base, extensions }: Edid): string[] =>
  [...base.descriptors, ...extensions.flatMap((one) => (one.kind === 'cta' ? one.timings : []))].flatMap(
    (slot) => (slot.kind === 'timing' ? [`${slot.timing.imageMm.width}x${slot.timing.imageMm.height}`] : []),
  );

/** A failure without the place and the figures in it, which a limit may change. */
const kindOfFailure = (text: string): string => text.replace(/0x[0-9a-f]+|[\d.]+/g, 'N');

describe('what a limit makes of them', () => {
  it('passes its check as well as the display did, with image sizes kept', () => {
    let changed = 0;
    for (const [i, tree] of displays.entries()) {
      const limited = limitEdid(tree, limits[i] ?? {});
      const [before, after] = [encodeEdid(tree), encodeEdid(limited)];
      const had = new Set(referenceFailures(before).map(kindOfFailure));
      const fresh = referenceFailures(after).filter((failure) => !had.has(kindOfFailure(failure)));
      expect({ i, limits: limits[i], fresh }).toEqual({ i, limits: limits[i], fresh: [] });
      const sizes = new Set(imageSizes(tree));
      expect(imageSizes(limited).filter((size) => !sizes.has(size))).toEqual([]);
      expect(imageSizes(limited).length).toBeGreaterThan(0);
      if (!Buffer.from(before).equals(Buffer.from(after))) changed += 1;
    }
    expect(changed).toBeGreaterThan(200);
  });

  it('breaks no further rule of an EDID that no display has, but those that are explained', () => {
    const absurd = fc.sample(referenceEdid, { numRuns: 500, seed: 3 });
    const gained = absurd.flatMap((tree, i) => {
      const [before, after] = [tree, limitEdid(tree, limits[i % limits.length] ?? {})].map((each) =>
        referenceFailures(encodeEdid(each)).map(kindOfFailure),
      );
      return (after ?? []).filter((failure) => !before?.includes(failure));
    });
    expect(gained.filter((failure) => !explainedGains.some(({ of }) => of.test(failure)))).toEqual([]);
    expect(gained.length).toBeLessThanOrEqual(mostGains);
  });
});

/** Failures that a limit adds to EDIDs of fields at random, and why; neither list nor number may grow. */
const explainedGains = [
  {
    why: 'Every timing of the DisplayID section is past the limit, and a section may not say less than it must.',
    of: /DisplayID/,
  },
  {
    why:
      'The section went with its timings; what follows it had no CTA-861 block in front before either, or is checked as ' +
      'CTA-861 only now that no DisplayID is there.',
    of: /first Extension Block|no Basic Audio support|display size is not specified anywhere/,
  },
  {
    why:
      'A fixed rate link beside TMDS that is too slow for it: said before of the higher rate in other words, and a limit ' +
      'raises nothing.',
    of: /Max Fixed Rate Link is N, but Max TMDS rate/,
  },
] as const;
const mostGains = 17;
