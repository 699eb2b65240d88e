import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../shared/contract/chain.ts';
import { chainBudget } from '../../../shared/signal/link-budget/index.ts';
import { display, frl48, input, output, rowOf, source, tmds9, withPort } from '../../chain/build-chain.ts';
import { edid9, edid18, edid48, edid48Plain, edid1080, format, uhd60, uhd120, withEdid } from './chains.ts';

describe('a link', () => {
  const pair = (facts = {}) => withEdid(rowOf([source('s'), display('d')], facts), 'd', 'in1', edid18);
  const only = (chain: Chain, wanted = uhd60) => {
    const found = chainBudget(chain, [wanted]).links[0]?.wanted[0];
    if (found === undefined) throw new Error('no link');
    return found;
  };

  it('that fits says by how much', () => {
    expect(only(pair())).toMatchObject({
      verdict: 'fits',
      figures: { way: 'tmds', needGbps: 17.82, capacityGbps: 18, narrowest: 'cable' },
      sentence: {
        code: 'linkBudget',
        values: {
          need: { code: 'linkNeeds', values: { need: 17.82 } },
          limit: { code: 'cableIsGoodFor', values: { rate: 18 } },
          headroom: { code: 'rateToSpare', values: { share: expect.closeTo(0.0101, 4) } },
        },
      },
    });
  });

  // The figures of the issue: (10.2 - 17.82) / 17.82 is -42.8 %.
  it('that is too slow says what is short, by how much', () => {
    const found = only(pair({ category: 'highSpeed' }));
    expect(found).toMatchObject({
      verdict: 'short',
      sentence: {
        code: 'linkBudget',
        values: {
          limit: { code: 'cableIsGoodFor', values: { rate: 10.2 } },
          headroom: { code: 'rateExceeded', values: { share: expect.closeTo(0.7471, 4) } },
        },
      },
    });
    expect(found.figures?.headroomGbps).toBeCloseTo(-7.62, 9);
    expect(found.figures?.headroomFraction).toBeCloseTo(-0.7471, 4);
  });

  it('that may be good enough says what speaks against it', () => {
    expect(only(pair({ certified: false }))).toMatchObject({
      verdict: 'doubtful',
      ratedGbps: 18,
      sentence: {
        code: 'cableCountedForLess',
        values: { rated: 18, reasons: [{ code: 'doubtCertification' }], counted: expect.closeTo(14.4, 9) },
      },
    });
  });

  it('names a port that is set below what it can do', () => {
    const limitOf = (chain: Chain) => only(chain).sentence.values.limit;
    expect(limitOf(withPort(pair(), 'd', 'in1', { setMode: tmds9 }))).toMatchObject({
      code: 'portIsSetToPass',
      values: { port: { portId: 'in1', device: { deviceId: 'd' } }, rate: 9 },
    });
    expect(limitOf(withPort(pair(), 's', 'out1', { highestMode: tmds9 }))).toMatchObject({
      code: 'portPasses',
      values: { port: { portId: 'out1', device: { deviceId: 's' } }, rate: 9 },
    });
  });

  it('names the EDID, by rate or by what it leaves out', () => {
    const seenBy = { portId: 'out1', device: { deviceId: 's' } };
    expect(only(withEdid(pair(), 'd', 'in1', edid9)).sentence.values.limit).toMatchObject({
      code: 'edidAdmits',
      values: { port: seenBy, rate: 9 },
    });
    expect(only(withEdid(pair(), 'd', 'in1', edid1080))).toMatchObject({
      verdict: 'notOffered',
      sentence: {
        code: 'linkNotOffered',
        values: { port: seenBy, reasons: [{ code: 'edidLacksSize' }] },
      },
    });
  });

  it.each([
    [format(2160, 60, 'ycbcr420', 8), 'fits', []],
    [format(1080, 60, 'ycbcr420', 8), 'notOffered', [{ code: 'edidLacksSizeIn420', values: {} }]],
    [format(2160, 24, 'rgb', 12), 'fits', []],
  ] as const)('offers %o as its EDID says', (wanted, verdict, refusals) => {
    expect(only(pair(), wanted)).toMatchObject({ verdict, refusals });
  });

  it('without a known EDID is judged by ports and cable', () => {
    const chain = rowOf([source('s'), display('d')]);
    expect(only(chain)).toMatchObject({ verdict: 'fits', refusals: [] });
    expect(chainBudget(chain, [uhd60]).links[0]).toMatchObject({ seen: { offer: null, hands: [] } });
  });

  it('can’t carry what there is no way to send', () => {
    const wanted = format(2160, 60, 'ycbcr422', 16);
    expect(only(pair(), wanted)).toMatchObject({
      verdict: 'short',
      figures: null,
      sentence: { code: 'noWayToSend', values: { format: wanted } },
    });
  });

  describe('of fixed rate', () => {
    const fast = (facts = {}) =>
      withEdid(
        rowOf(
          [
            source('s', { ports: [output('out1', { highestMode: frl48 })] }),
            display('d', { ports: [input('in1', { highestMode: frl48 })] }),
          ],
          { category: 'ultraHighSpeed', ...facts },
        ),
        'd',
        'in1',
        edid48,
      );

    it('is taken where TMDS does not carry the format', () => {
      expect(only(fast(), uhd120)).toMatchObject({
        verdict: 'fits',
        figures: { way: 'frl', capacityGbps: 48 },
      });
      expect(only(fast(), uhd60)).toMatchObject({ verdict: 'fits', figures: { way: 'tmds' } });
    });

    it('counts a TMDS cable as what it is', () => {
      const slow = withEdid(fast({ category: 'highSpeed' }), 'd', 'in1', edid48Plain);
      expect(only(slow, format(2160, 60, 'rgb', 12))).toMatchObject({
        verdict: 'short',
        figures: { way: 'frl', capacityGbps: 9, narrowest: 'cable' },
      });
      const facts = { construction: 'twistedPairExtender', category: 'highSpeed' } as const;
      const extender = only(fast(facts), uhd120);
      expect(extender.figures).toMatchObject({ way: 'tmds', capacityGbps: 10.2 });
      expect(extender.sentence).toMatchObject({
        code: 'linkBudget',
        values: {
          need: { code: 'linkNeeds', values: { need: expect.closeTo(44.55, 9) } },
          limit: {
            code: 'byTmdsOnly',
            values: { limit: { code: 'extenderIsGoodFor', values: { rate: 10.2 } } },
          },
        },
      });
    });

    it('is not mixed up with TMDS where the ports pass no other', () => {
      const found = only(rowOf([source('s'), display('d')]), format(2160, 60, 'rgb', 10));
      expect(found.sentence.values).toMatchObject({
        need: { code: 'linkNeeds', values: { need: expect.closeTo(22.275, 9) } },
        limit: { code: 'byTmdsOnly', values: { limit: { code: 'portPasses', values: { rate: 18 } } } },
      });
    });

    it('may go compressed where it does not go plain', () => {
      const wanted = format(4320, 60, 'rgb', 10);
      const found = only(fast(), wanted);
      expect(found).toMatchObject({ verdict: 'doubtful', ratedGbps: null, compressed: { bitsPerPixel: 12 } });
      expect(found.sentence).toMatchObject({
        code: 'onlyCompressed',
        values: { limit: { code: 'cableIsGoodFor', values: { rate: 48 } }, bitsPerPixel: 12 },
      });
    });
  });
});
