import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainDiff } from '../../shared/chain/diff.ts';
import { placeExists } from '../../shared/chain/graph.ts';
import type { Chain, VideoFormat } from '../../shared/contract/chain.ts';
import { english } from '../../shared/message/en/index.ts';
import { messageText } from '../../shared/message/index.ts';
import { arbitraryChain } from './arbitrary-chain.ts';
import { homeCinema, tmds9, withDevice, withPort } from './build-chain.ts';

const uhd60: VideoFormat = {
  widthPx: 3840,
  heightPx: 2160,
  interlaced: false,
  refreshHz: 60,
  encoding: 'ycbcr422',
  bitsPerComponent: 12,
};

const turned = <Whole extends object>(whole: Whole): Whole =>
  Object.fromEntries(Object.entries(whole).reverse()) as Whole;

/** The same chain with everything that has no order in another order. */
function shuffled(chain: Chain): Chain {
  return {
    ...chain,
    devices: [...chain.devices].reverse().map((device) => ({
      ...device,
      edidHandling: turned(device.edidHandling),
      ports: [...device.ports].reverse().map((port) => ({ ...port, highestMode: turned(port.highestMode) })),
      settings: Object.fromEntries(Object.entries(device.settings).reverse()),
    })),
    links: [...chain.links].reverse(),
    wantedFormats: [...chain.wantedFormats].reverse(),
  };
}

describe('any two chains', () => {
  it('that are the same, in whatever order, have no difference', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        expect(chainDiff(chain, structuredClone(chain))).toEqual([]);
        expect(chainDiff(chain, shuffled(chain))).toEqual([]);
      }),
    );
  });

  it('differ the same way seen from either side', () => {
    fc.assert(
      fc.property(arbitraryChain({ maxBetween: 3 }), arbitraryChain({ maxBetween: 3 }), (one, other) => {
        const there = chainDiff(one, other);
        const back = chainDiff(other, one);
        const tally = (changes: typeof there, kind: string): number =>
          changes.filter((change) => change.kind === kind).length;
        expect(back).toHaveLength(there.length);
        expect(tally(back, 'removed')).toBe(tally(there, 'added'));
        const words = there.map(({ sentence }) => messageText(sentence, english, 'UTC'));
        expect(words.filter((text) => /undefined|\[object|null/.test(text))).toEqual([]);
        const homeless = there.filter(
          ({ place, kind }) => !placeExists(kind === 'removed' ? one : other, place),
        );
        expect(homeless).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('never hide a changed field', () => {
    const other = (value: unknown): unknown => {
      if (typeof value === 'boolean') return !value;
      if (typeof value === 'number') return value + 1;
      return value === null ? 'set' : `${value}x`;
    };
    const base = withPort(withDevice(homeCinema(), 'receiver', { outputFormat: uhd60 }), 'receiver', 'in1', {
      setMode: tmds9,
    });
    const changedAt = (path: string[], whole: unknown): unknown => {
      const [key, ...rest] = path;
      if (key === undefined) return other(whole);
      const copy: Record<string, unknown> = Array.isArray(whole)
        ? ([...whole] as never)
        : { ...(whole as object) };
      copy[key] = changedAt(rest, copy[key]);
      return copy;
    };
    const leaves = (value: unknown, path: string[] = []): string[][] =>
      value !== null && typeof value === 'object'
        ? Object.entries(value).flatMap(([key, each]) => leaves(each, [...path, key]))
        : [path];
    // Null there stands for a whole object, which the sentences above cover.
    const paths = leaves(base).filter((path) => !['outputFormat', 'setMode'].includes(path.at(-1) ?? ''));
    expect(paths.length).toBeGreaterThan(300);
    for (const path of paths)
      expect([path, chainDiff(base, changedAt(path, base) as Chain).length]).not.toEqual([path, 0]);
  });
});
