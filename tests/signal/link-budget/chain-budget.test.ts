import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatName } from '../../../shared/chain/signal-mode.ts';
import { type ChainBudget, chainBudget, compareWithout } from '../../../shared/signal/link-budget/index.ts';
import { arbitraryChain } from '../../chain/arbitrary-chain.ts';
import { cable, chainOf, receiver, withDevice, withLink, withPort } from '../../chain/build-chain.ts';
import { cinema, edid1080, format, uhd60, uhd120 } from './chains.ts';

const onLink = (of: ChainBudget, linkId: string) => {
  const link = of.links.find(({ id }) => id === linkId);
  if (link === undefined) throw new Error(`no link ${linkId}`);
  return link;
};

describe('a chain', () => {
  it('is judged by its worst link', () => {
    const chain = withLink(cinema(), 'L3', { category: 'highSpeed' });
    expect(chainBudget(chain, [uhd60]).wanted).toMatchObject([{ verdict: 'short', linkId: 'L3' }]);
    const budget = chainBudget(chain, [uhd60]);
    expect(budget.wanted[0]?.sentence).toMatchObject({
      code: 'formatTooMuch',
      values: {
        format: uhd60,
        link: { linkId: 'L3' },
        onLink: onLink(budget, 'L3').wanted[0]?.sentence,
      },
    });
  });

  it('is judged behind a processor by what that sends', () => {
    const chain = withDevice(cinema(), 'processor', { outputFormat: format(2160, 60, 'rgb', 12) });
    const found = chainBudget(chain, [format(1080, 24, 'rgb', 8)]);
    expect(onLink(found, 'L3').wanted[0]).toMatchObject({ verdict: 'fits', format: { heightPx: 1080 } });
    expect(onLink(found, 'L4').wanted[0]).toMatchObject({
      verdict: 'short',
      format: { heightPx: 2160, bitsPerComponent: 12 },
      figures: { way: 'tmds', needGbps: expect.closeTo(26.73, 9) },
    });
    expect(found.best).toBeNull();
  });

  it('knows the best format that fits everywhere, and to each display', () => {
    const whole = chainBudget(cinema(), [uhd60]);
    expect(whole.best && formatName(whole.best)).toBe('3840×2160p60 4:2:2 12 bit');
    const old = withPort(cinema(), 'television', 'in1', { edidHex: edid1080 });
    const found = chainBudget(old, [uhd60]);
    expect(found.best && formatName(found.best)).toBe('1920×1080p60 RGB 12 bit');
    const best = Object.fromEntries(found.displays.map(({ displayId, best }) => [displayId, best?.heightPx]));
    expect(best).toEqual({ projector: 1080, television: 1080 });
  });

  it('knows what is lost at 9 Gbit/s', () => {
    const found = chainBudget(cinema(), [uhd60, format(2160, 24, 'ycbcr422', 12)]);
    expect(found.wanted.map(({ lostAtNineGbps }) => lostAtNineGbps)).toEqual([true, false]);
    expect(found.atNineGbps.best && formatName(found.atNineGbps.best)).toBe('3840×2160p60 4:2:0 8 bit');
    expect(found.atNineGbps.lost.map(formatName)).toContain('3840×2160p60 RGB 8 bit');
    for (const lost of found.atNineGbps.lost) expect(found.fitting).toContain(lost);
  });

  it('without a device joins what it stood between by the longer cable', () => {
    const found = chainBudget(cinema(), [uhd60], { without: 'processor' });
    expect(found.links.map(({ id }) => id)).toEqual(['L1', 'L2', 'L5', 'L3+L4']);
    expect(onLink(found, 'L3+L4')).toMatchObject({
      cableLinkId: 'L4',
      linkIds: ['L3', 'L4'],
      from: { deviceId: 'receiver' },
      to: { deviceId: 'projector' },
    });
    expect(onLink(found, 'L3+L4').name.values.place).toMatchObject({
      linkId: 'L3+L4',
      ends: { from: { device: { deviceId: 'receiver' } }, to: { device: { deviceId: 'projector' } } },
    });
  });

  it('says why it worked without the processor', () => {
    const chain = withDevice(cinema(), 'processor', { outputFormat: format(2160, 60, 'rgb', 12) });
    const found = compareWithout(chain, [uhd60], 'processor');
    expect(found.formats).toMatchObject([
      { effect: 'better', withIt: { linkId: 'L4' }, withoutIt: { verdict: 'fits' } },
    ]);
    expect(found.formats[0]?.sentence).toMatchObject({
      code: 'fitsWithoutDevice',
      values: { device: { deviceId: 'processor' }, format: uhd60, withIt: { code: 'formatTooMuch' } },
    });
  });

  it('takes the formats that it names itself where none are asked for', () => {
    expect(chainBudget({ ...cinema(), wantedFormats: [uhd120] }, []).wanted).toMatchObject([
      { wanted: uhd120 },
    ]);
  });

  it('ends on any chain and names links that are there', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        const found = chainBudget(chain, [uhd60, uhd120]);
        const ids = chain.links.map(({ id }) => id);
        expect(found.links.map(({ id }) => id)).toEqual(ids);
        for (const { linkId } of found.wanted) expect(ids).toContain(linkId);
        for (const { wanted } of found.links) expect(wanted.length).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('with any device taken out no longer touches it', () => {
    fc.assert(
      fc.property(arbitraryChain(), fc.nat(), (chain, at) => {
        const device = chain.devices[at % chain.devices.length]?.id ?? '';
        const found = chainBudget(chain, [uhd60], { without: device });
        for (const { from, to } of found.links) expect([from.deviceId, to.deviceId]).not.toContain(device);
      }),
    );
  });

  it('ends on a loop and on links to nowhere', () => {
    const loop = chainOf(
      [receiver('a'), receiver('b')],
      [cable('a.out1', 'b.in1'), cable('b.out1', 'a.in1'), cable('a.out2', 'x.in1')],
    );
    expect(chainBudget(loop, [uhd60]).links).toHaveLength(2);
  });
});
