import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain, Device } from '../../../shared/contract/chain.ts';
import { encodeEdid } from '../../../shared/signal/edid/index.ts';
import {
  type BudgetOptions,
  type ChainBudget,
  chainBudget,
  shownHex,
} from '../../../shared/signal/link-budget/index.ts';
import { arbitraryChain } from '../../chain/arbitrary-chain.ts';
import { cable, chainOf, display, processor, source, withDevice } from '../../chain/build-chain.ts';
import { edid } from '../edid/arbitrary-edid.ts';
import { cinema, edid9, edid18, edid48, edid1080, uhd60, withEdid } from './chains.ts';

const onLink = (of: ChainBudget, linkId: string) => {
  const link = of.links.find(({ id }) => id === linkId);
  if (link === undefined) throw new Error(`no link ${linkId}`);
  return link;
};

describe('the EDID that an output sees', () => {
  const seenBy = (chain: Chain, linkId: string, options: BudgetOptions = {}) =>
    onLink(chainBudget(chain, [uhd60], options), linkId).seen;
  const did = (chain: Chain, linkId: string) =>
    seenBy(chain, linkId).hands.map(({ deviceId, did }) => `${deviceId} ${did}`);
  const row = (facts: Partial<Device> = {}) =>
    withEdid(
      chainOf(
        [source('s'), processor('p', facts), display('d')],
        [cable('s.out1', 'p.in1', { id: 'A' }), cable('p.out1', 'd.in1', { id: 'B' })],
      ),
      'd',
      'in1',
      edid18,
    );

  it('is passed on whole', () => {
    expect(did(row(), 'A')).toEqual(['d answers', 'p passesOn']);
    expect(seenBy(row(), 'A')).toMatchObject({ edidHex: edid18 });
  });

  it('is limited on the way', () => {
    const limits = {
      kind: 'limits',
      maxTmdsCharacterRateMHz: 300,
      dropsFrl: true,
      drops420: true,
      dropsHdr: true,
      stereoOnly: false,
    } as const;
    const chain = row({ edidHandling: limits });
    expect(did(chain, 'A')).toEqual(['d answers', 'p limits']);
    expect(seenBy(chain, 'A')).toMatchObject({
      offer: { tmdsMHz: 300, vics420: [], hdr: [] },
    });
    expect(seenBy(chain, 'B').edidHex).toBe(edid18);
    expect(seenBy(chain, 'A+B', { without: 'p' }).edidHex).toBe(edid18);
  });

  it('limited on the way offers what its bytes do', () => {
    const limiting = fc.record({
      kind: fc.constant('limits' as const),
      maxTmdsCharacterRateMHz: fc.constantFrom(null, 165, 300, 600),
      dropsFrl: fc.boolean(),
      drops420: fc.boolean(),
      dropsHdr: fc.boolean(),
      stereoOnly: fc.boolean(),
    });
    fc.assert(
      fc.property(edid, limiting, fc.option(limiting), (tree, first, second) => {
        const shown = Buffer.from(encodeEdid(tree)).toString('hex');
        const atDisplay = { edidHandling: second ?? ({ kind: 'passesOn' } as const) };
        const limited = withDevice(withEdid(row({ edidHandling: first }), 'd', 'in1', shown), 'd', atDisplay);
        const { offer, ...seen } = seenBy(limited, 'A');
        expect(offer).not.toBeNull();
        expect(seenBy(withEdid(row(), 'd', 'in1', shownHex(seen) ?? ''), 'A').offer).toEqual(offer);
      }),
      { numRuns: 50 },
    );
  });

  it('limited to 9 Gbit/s loses what the budget says is lost then, and nothing else', () => {
    const handling = {
      kind: 'limits',
      maxTmdsCharacterRateMHz: 300,
      dropsFrl: true,
      drops420: false,
      dropsHdr: false,
      stereoOnly: false,
    } as const;
    const free = chainBudget(row(), [uhd60]);
    const limited = chainBudget(row({ edidHandling: handling }), [uhd60]);
    const onSource = limited.links.find(({ id }) => id === 'A');
    const lost = free.fitting.filter((format) => !onSource?.fitting.includes(format));
    expect(lost).toEqual(free.atNineGbps.lost);
    expect(limited.fitting).toEqual(free.fitting.filter((format) => !free.atNineGbps.lost.includes(format)));
  });

  it('is replaced on the way', () => {
    const chain = row({ edidHandling: { kind: 'replaces', edidHex: edid1080 } });
    expect(did(chain, 'A')).toEqual(['p replaces']);
    expect(seenBy(chain, 'A').edidHex).toBe(edid1080);
  });

  it('is not known before a device whose own EDID nobody read', () => {
    const chain = row({ edidHandling: { kind: 'replaces', edidHex: null } });
    expect(seenBy(chain, 'A')).toEqual({ offer: null, edidHex: null, limits: [], hands: [] });
    expect(seenBy(withEdid(chain, 'p', 'in1', edid9), 'A').offer?.tmdsMHz).toBe(300);
    expect(seenBy(chain, 'B').edidHex).toBe(edid18);
  });

  it('is the reading where one was taken, unless what followed it is taken out', () => {
    const chain = withEdid(row(), 's', 'out1', edid9);
    expect(seenBy(chain, 'A')).toMatchObject({ edidHex: edid9, hands: [{ deviceId: 's', did: 'read' }] });
    expect(seenBy(chain, 'A+B', { without: 'p' })).toMatchObject({
      edidHex: edid18,
      hands: [{ deviceId: 'd', did: 'answers' }],
    });
  });

  it('is what all outputs in use have in common', () => {
    const chain = withEdid(cinema(), 'television', 'in1', edid9);
    expect(did(chain, 'L1')).toEqual([
      'projector answers',
      'processor passesOn',
      'television answers',
      'receiver combines',
    ]);
    expect(seenBy(chain, 'L1').offer?.tmdsMHz).toBe(300);
    expect(seenBy(chain, 'L3').offer?.tmdsMHz).toBe(600);
  });

  it('never grows on its way when devices pass on or limit', () => {
    const handling = fc.constantFrom<Device['edidHandling']>(
      { kind: 'passesOn' },
      {
        kind: 'limits',
        maxTmdsCharacterRateMHz: 340,
        dropsFrl: true,
        drops420: false,
        dropsHdr: false,
        stereoOnly: false,
      },
    );
    fc.assert(
      fc.property(
        arbitraryChain(),
        handling,
        fc.constantFrom(edid18, edid48, edid9),
        (made, edidHandling, edidHex) => {
          const devices = made.devices.map((device) => ({
            ...device,
            edidHandling: device.role === 'display' ? ({ kind: 'passesOn' } as const) : edidHandling,
            ports: device.ports.map((port) => ({
              ...port,
              edidHex: device.role === 'display' ? edidHex : null,
            })),
          }));
          const { links } = chainBudget({ ...made, devices }, [uhd60]);
          for (const { to, seen } of links) {
            const after = links.filter(({ from }) => from.deviceId === to.deviceId);
            for (const { seen: below } of after)
              expect(seen.offer?.tmdsMHz).toBeLessThanOrEqual(below.offer?.tmdsMHz ?? 0);
          }
        },
      ),
    );
  });
});
