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
      sentence: 'This link needs 17.82 Gbit/s, the cable is good for 18: 1 % to spare.',
    });
  });

  // The figures of the issue: (10.2 - 17.82) / 17.82 is -42.8 %.
  it('that is too slow says what is short, by how much', () => {
    const found = only(pair({ category: 'highSpeed' }));
    expect(found).toMatchObject({
      verdict: 'short',
      sentence: 'This link needs 17.82 Gbit/s, the cable is good for 10.2: 43 % short.',
    });
    expect(found.figures?.headroomGbps).toBeCloseTo(-7.62, 9);
    expect(found.figures?.headroomFraction).toBeCloseTo(-0.4276, 4);
  });

  it('that may be good enough says what speaks against it', () => {
    expect(only(pair({ certified: false }))).toMatchObject({
      verdict: 'doubtful',
      ratedGbps: 18,
      sentence:
        'This link needs 17.82 Gbit/s. The cable may be good for 18, but nobody has seen its certification label: count on 14.4 (assumed), 19 % short.',
    });
  });

  it('names a port that is set below what it can do', () => {
    expect(only(withPort(pair(), 'd', 'in1', { setMode: tmds9 })).sentence).toBe(
      'This link needs 17.82 Gbit/s, Projector ‘HDMI IN1’ is set to pass no more than 9: 49 % short.'.replaceAll(
        /[‘’]/g,
        "'",
      ),
    );
    expect(only(withPort(pair(), 's', 'out1', { highestMode: tmds9 })).sentence).toBe(
      "This link needs 17.82 Gbit/s, Disc player 'HDMI OUT1' passes 9: 49 % short.",
    );
  });

  it('names the EDID, by rate or by what it leaves out', () => {
    expect(only(withEdid(pair(), 'd', 'in1', edid9)).sentence).toBe(
      "This link needs 17.82 Gbit/s, the EDID that Disc player 'HDMI OUT1' sees admits 9: 49 % short.",
    );
    expect(only(withEdid(pair(), 'd', 'in1', edid1080))).toMatchObject({
      verdict: 'notOffered',
      sentence:
        "This link needs 17.82 Gbit/s, but the EDID that Disc player 'HDMI OUT1' sees doesn’t offer this size and rate.",
    });
  });

  it.each([
    [format(2160, 60, 'ycbcr420', 8), 'fits', []],
    [format(1080, 60, 'ycbcr420', 8), 'notOffered', ['doesn’t offer this size and rate in 4:2:0']],
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
      sentence: 'There is no way to send 3840×2160p60 4:2:2 16 bit.',
    });
  });

  it('calls what rounds to none less than one per cent', () => {
    const chain = withPort(pair(), 's', 'out1', { setMode: { kind: 'tmds', maxCharacterRateMHz: 593 } });
    expect(only(chain).sentence).toMatch(/is set to pass no more than 17.79: less than 1 % short\.$/);
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
      const extender = only(fast({ construction: 'twistedPairExtender' }), uhd120);
      expect(extender.figures).toMatchObject({ way: 'frl', capacityGbps: 10.2 });
      expect(extender.sentence).toMatch(
        /^This link needs 38.0\d Gbit\/s of a fixed rate link, the cable is good for 10.2, by TMDS only: 73 % short.$/,
      );
    });

    it('is not mixed up with TMDS where the ports pass no other', () => {
      expect(only(rowOf([source('s'), display('d')]), format(2160, 60, 'rgb', 10)).sentence).toMatch(
        /^This link needs 19.0\d Gbit\/s of a fixed rate link, .* 'HDMI OUT1' passes 18, by TMDS only: 5 % short.$/,
      );
    });

    it('may go compressed where it does not go plain', () => {
      const wanted = format(4320, 60, 'rgb', 10);
      const found = only(fast(), wanted);
      expect(found).toMatchObject({ verdict: 'doubtful', ratedGbps: null, compressed: { bitsPerPixel: 12 } });
      expect(found.sentence).toMatch(
        /good for 48: it goes only compressed, to 12 bits a pixel, if the source can/,
      );
    });
  });
});
