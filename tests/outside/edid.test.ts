import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  decodeEdid,
  type Edid,
  type EdidLimits,
  encodeEdid,
  limitEdid,
  summarise,
} from '../../shared/signal/edid/index.ts';
import { referenceEdid } from '../signal/edid/arbitrary-edid.ts';
import {
  baseBlock,
  ctaExtension,
  plainDisplay,
  timingSlot,
  videoBlock,
  wallDisplay,
} from '../signal/edid/build-edid.ts';
import { edidDecode } from './edid-decode.ts';
import {
  factsFromReference,
  type ReferenceFacts,
  referenceFailures,
  referenceOutput,
} from './edid-decode-output.ts';
import { knownDifferences } from './edid-known-differences.ts';

/*
 * Against Debian's edid-decode, which nobody here wrote: every field of the summary, for EDIDs that our encoder made.
 */

/** Random, but the same in every run, so that a difference can be looked at. */
const randomEdids = fc.sample(referenceEdid, { numRuns: 150, seed: 861 });

const overriding: Edid = {
  base: baseBlock(),
  extensions: [
    ctaExtension([{ kind: 'extensionOverride', extensionCount: 2 }, videoBlock(16, -4)]),
    ctaExtension([videoBlock(97, 96)], { timings: [timingSlot(16)] }),
  ],
};
const mapped: Edid = {
  base: baseBlock(),
  extensions: [
    { kind: 'blockMap', tags: [2, 2, ...new Array<number>(124).fill(0)] },
    ctaExtension([videoBlock(16)]),
    ctaExtension([videoBlock(4, 16)]),
  ],
};
const oldRevisions: Edid[] = [1, 2].map((revision) => ({
  base: baseBlock({ revision }),
  extensions: [ctaExtension([], { revision, timings: [timingSlot(16)] })],
}));

const builtEdids: [string, Edid][] = [
  ['a display with everything', wallDisplay],
  ['a display of 18 Gbit/s', plainDisplay],
  ['an override of the extension count', overriding],
  ['a block map', mapped],
  ['a base block alone', { base: baseBlock({ revision: 4 }), extensions: [] }],
  ...oldRevisions.map((old): [string, Edid] => [`revision ${old.base.revision} of both`, old]),
];

const limits: EdidLimits[] = [
  { maxTmdsCharacterRateMHz: 300, dropFrl: true },
  { maxTmdsCharacterRateMHz: 165, dropFrl: true, dropHdr: true, stereoOnly: true },
  { dropFrl: true },
  { drop420: true },
  { dropHdr: true },
  { stereoOnly: true },
  { maxFrlGbps: 24 },
  { dropVrr: true },
  { dropCompression: true },
];
const limitedEdids = [wallDisplay, plainDisplay].flatMap((display) =>
  limits.map((limit): [string, Edid, EdidLimits] => [JSON.stringify(limit), display, limit]),
);

function oursOf(bytes: Uint8Array): ReferenceFacts {
  const { ok: _ok, problems: _problems, ...facts } = summarise(decodeEdid(bytes));
  return facts;
}

function referenceOf(bytes: Uint8Array): ReferenceFacts {
  const output = referenceOutput(bytes);
  if (output === null) throw new Error('edid-decode refuses an EDID of ours.');
  return factsFromReference(output);
}

const kindsIn = ({ base, extensions }: Edid): string[] => [
  ...base.descriptors.map(({ kind }) => `descriptor ${kind}`),
  ...extensions.flatMap((extension) => {
    if (extension.kind === 'cta') return extension.dataBlocks.map(({ kind }) => `data ${kind}`);
    if (extension.kind !== 'displayId') return [extension.kind];
    return extension.blocks.map((block) => `displayId ${block.kind === 'timings' ? block.type : block.kind}`);
  }),
];

const wantedKinds = [
  ...[
    'timing',
    'text',
    'rangeLimits',
    'standardTimings',
    'establishedTimingsIII',
    'cvtCodes',
    'whitePoints',
  ].map((kind) => `descriptor ${kind}`),
  ...['colourManagement', 'dummy', 'maker', 'unknown'].map((kind) => `descriptor ${kind}`),
  ...['audio', 'video', 'speakers', 'hdmi', 'hdmiForum', 'vendor', 'videoCapability', 'colorimetry'].map(
    (kind) => `data ${kind}`,
  ),
  ...['hdrStatic', 'hdrDynamic', 'formatPreference', 'ycbcr420Video', 'ycbcr420Map', 'room'].map(
    (kind) => `data ${kind}`,
  ),
  ...['speakerLocations', 'extensionOverride', 'unknown'].map((kind) => `data ${kind}`),
  ...['I', 'II', 'VI', 'VII', 'product', 'unknown'].map((kind) => `displayId ${kind}`),
  'blockMap',
  'other',
];

describe('our reading of an EDID against edid-decode', () => {
  beforeAll(() => {
    edidDecode('--version');
  });

  it('compares at least sixty EDIDs with every kind of block in them', () => {
    const all = [...randomEdids, ...builtEdids.map(([, tree]) => tree)];
    expect(all.length).toBeGreaterThanOrEqual(60);
    const present = new Set(all.flatMap(kindsIn));
    expect(wantedKinds.filter((kind) => !present.has(kind))).toEqual([]);
  });

  it.each(randomEdids.map((tree, i): [number, Edid] => [i, tree]))('agrees on random EDID %i', (_, tree) => {
    const bytes = encodeEdid(tree);
    expect(oursOf(bytes)).toEqual(referenceOf(bytes));
  });

  it.each(builtEdids)('agrees on %s', (_, tree) => {
    const bytes = encodeEdid(tree);
    expect(oursOf(bytes)).toEqual(referenceOf(bytes));
  });

  it('agrees on a damaged checksum and on extensions that are not declared', () => {
    const damaged = encodeEdid(wallDisplay);
    damaged[20] = (damaged[20] ?? 0) ^ 1;
    expect(referenceOf(damaged).checksumsValid).toBe(false);
    expect(oursOf(damaged)).toEqual(referenceOf(damaged));
    const undeclared = encodeEdid({ ...wallDisplay, extensions: [] });
    const together = Uint8Array.from([...undeclared, ...encodeEdid(wallDisplay).slice(128)]);
    expect(oursOf(together)).toEqual(referenceOf(together));
  });

  it.each(limitedEdids)('agrees on an EDID limited by %s, which breaks no rule anew', (_, display, limit) => {
    const bytes = encodeEdid(limitEdid(display, limit));
    expect(oursOf(bytes)).toEqual(referenceOf(bytes));
    const before = referenceFailures(encodeEdid(display));
    expect(referenceFailures(bytes).filter((failure) => !before.includes(failure))).toEqual([]);
  });
});

/** Every field by its path; timings whole. */
function fieldsOf(value: unknown, path = ''): [string, unknown][] {
  const whole =
    value === null || typeof value !== 'object' || Array.isArray(value) || path.endsWith('Timing');
  if (whole) return [[path, value]];
  return Object.entries(value).flatMap(([key, part]) => fieldsOf(part, path === '' ? key : `${path}.${key}`));
}

const sameText = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

describe('known differences from edid-decode', () => {
  it('are no more than these', () => {
    expect(knownDifferences.map(({ id }) => id)).toEqual([
      'interlaced-borders',
      'hdmi-vics-past-end',
      'hdmi-address-past-end',
      'vrr-past-end',
      'map-names-nothing',
      'data-past-block',
    ]);
  });

  it.each(knownDifferences.map((known) => [known.id, known] as const))(
    '%s is still one, and the only one',
    (_, known) => {
      const bytes = known.bytes();
      const ours = new Map(fieldsOf(oursOf(bytes)));
      const reference = new Map(fieldsOf(referenceOf(bytes)));
      expect(ours.get(known.field)).toEqual(known.ours);
      expect(reference.get(known.field)).toEqual(known.reference);
      const differing = [...new Set([...ours.keys(), ...reference.keys()])].filter(
        (field) => !sameText(ours.get(field), reference.get(field)),
      );
      expect(differing.filter((field) => field !== 'detailedTimings')).toEqual([known.field]);
      expect(known.why.length).toBeGreaterThan(40);
    },
  );
});
