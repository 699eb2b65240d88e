import { describe, expect, it } from 'vitest';
import { chain as chainForm } from '../../shared/contract/chain.ts';
import { corrected, countFrom, hdrValue, valuesAt } from '../../src/web/technician/corrections.ts';
import { homeCinema, withDevice, withLink } from '../chain/build-chain.ts';

const receiver = { kind: 'device', deviceId: 'receiver' } as const;
const first = { kind: 'link', linkId: 'L1' } as const;
const deviceOf = (of: ReturnType<typeof homeCinema>) => of.devices.find(({ id }) => id === 'receiver');
const linkOf = (of: ReturnType<typeof homeCinema>) => of.links.find(({ id }) => id === 'L1');

describe('a correction on site', () => {
  it('of the HDR that a device does is kept beside what else it passes', () => {
    const known = withDevice(homeCinema(), 'receiver', { passes: { deepestBits: 10 } });
    const after = chainForm.parse(corrected(known, receiver, { hdr: 'hdr10 hlg' }));
    expect(deviceOf(after)?.passes).toEqual({ deepestBits: 10, dynamicRanges: ['hdr10', 'hlg'] });
    expect(valuesAt(after, receiver).hdr).toBe('hdr10 hlg');
    expect(deviceOf(corrected(after, receiver, { hdr: 'none' }))?.passes?.dynamicRanges).toEqual([]);
    expect(deviceOf(corrected(after, receiver, { hdr: '' }))?.passes).toEqual({ deepestBits: 10 });
    expect(hdrValue([])).toBe('none');
  });

  it('of nothing leaves the record without what nobody looked up', () => {
    const after = chainForm.parse(corrected(homeCinema(), receiver, { serial: 'A1' }));
    expect(deviceOf(after)).toEqual({ ...deviceOf(homeCinema()), serial: 'A1' });
    expect(chainForm.parse(corrected(homeCinema(), first, { lengthM: '4' }))).toEqual(
      withLink(homeCinema(), 'L1', { lengthM: 4 }),
    );
  });

  it('of couplers takes none, a count, or that nobody looked', () => {
    expect(linkOf(corrected(homeCinema(), first, { couplers: '0' }))?.couplers).toBe(0);
    const counted = withLink(homeCinema(), 'L1', { couplers: 2 });
    expect(linkOf(corrected(counted, first, { couplers: '' }))?.couplers).toBeUndefined();
    expect(linkOf(corrected(counted, first, { couplers: 'two' }))?.couplers).toBe(2);
    expect(countFrom('couplers', '11')).toBeNull();
  });

  it('of what a jacket or a maker says takes its figures, and takes them away', () => {
    const said = corrected(homeCinema(), first, { gaugeAwg: '24', ratedGbps: '18', ratedLengthM: '7,5' });
    const after = chainForm.parse(said);
    expect(linkOf(after)).toMatchObject({ gaugeAwg: 24, rated: { gbps: 18, lengthM: 7.5 } });
    expect(valuesAt(after, first)).toMatchObject({ gaugeAwg: '24', ratedGbps: '18', ratedLengthM: '7.5' });
    const noLength = linkOf(chainForm.parse(corrected(after, first, { ratedLengthM: '' })));
    expect(noLength?.rated).toEqual({ gbps: 18, lengthM: null });
    expect(chainForm.parse(corrected(after, first, { ratedGbps: '', gaugeAwg: '' }))).toEqual(homeCinema());
    for (const [name, text] of [
      ['gaugeAwg', '40'],
      ['ratedGbps', '0'],
      ['ratedLengthM', 'far'],
    ] as const)
      expect(countFrom(name, text)).toBeNull();
  });
});
