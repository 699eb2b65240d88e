import { describe, expect, it } from 'vitest';
import { compareEdids, type Edid, limitEdid } from '../../../shared/signal/edid/index.ts';
import { baseBlock, ctaExtension, hdmiBlock, plainDisplay, videoBlock, wallDisplay } from './build-edid.ts';

const textOf = (first: Edid, second: Edid, perspective: 'overTime' | 'passedOn', topic: string) =>
  compareEdids(first, second, perspective).find((difference) => difference.topic === topic)?.text;

const nineGbit = limitEdid(wallDisplay, { maxTmdsCharacterRateMHz: 300, dropFrl: true });

describe('comparing two EDIDs', () => {
  it('finds nothing between an EDID and itself', () => {
    expect(compareEdids(wallDisplay, wallDisplay, 'passedOn')).toEqual([]);
  });

  it('says what a receiver set to 9 Gbit/s takes away', () => {
    const texts = compareEdids(wallDisplay, nineGbit, 'passedOn').map(({ text }) => text);
    expect(texts).toEqual([
      'TMDS character rate: 600 MHz (18 Gbit/s) at the display, 300 MHz (9 Gbit/s) passed on.',
      'Fixed rate link: 40 Gbit/s (4 lanes of 10) at the display, none passed on.',
      'Compression (DSC): up to 40 Gbit/s (4 lanes of 10) at the display, none passed on.',
      'Preferred timing: 3840x2160p60 at the display, 1920x1080p60 passed on.',
      'Formats not passed on: 3840x2160p120, 3840x2160p100.',
      'Formats in YCbCr 4:2:0 not passed on: 3840x2160p120, 3840x2160p100.',
      'Formats in YCbCr 4:2:0 alone added on the way: 3840x2160p60, 3840x2160p50.',
      'Status and control channel (SCDC) not passed on: there.',
    ]);
  });

  it('says what is gone since before, and what has come', () => {
    const stereo = limitEdid(wallDisplay, { stereoOnly: true, dropHdr: true });
    expect(textOf(wallDisplay, stereo, 'overTime', 'hdr')).toBe('HDR no longer: PQ, HLG, peak 604 cd/m².');
    expect(textOf(stereo, wallDisplay, 'overTime', 'hdr')).toBe('HDR now also: PQ, HLG, peak 604 cd/m².');
    expect(textOf(wallDisplay, stereo, 'overTime', 'audio')).toContain('no longer: Linear PCM 8 channels');
    expect(textOf(wallDisplay, stereo, 'overTime', 'dynamicHdr')).toContain('OUI 02-A1-B2');
  });

  it('tells lost, gained and changed apart', () => {
    const changeOf = (topic: string) =>
      compareEdids(wallDisplay, nineGbit, 'overTime').find((difference) => difference.topic === topic)
        ?.change;
    expect(changeOf('fixedRateLink')).toBe('lost');
    expect(changeOf('chroma420Alone')).toBe('gained');
    expect(changeOf('tmdsRate')).toBe('changed');
  });

  it('sees another display, and another place in the CEC tree', () => {
    const other: Edid = {
      base: baseBlock({
        productCode: 7,
        descriptors: plainDisplay.base.descriptors.slice(0, 2).concat(dummies),
      }),
      extensions: [ctaExtension([videoBlock(16), hdmiBlock({ physicalAddress: '2.1.0.0' })])],
    };
    const topics = compareEdids(plainDisplay, other, 'overTime').map(({ topic }) => topic);
    expect(topics).toContain('display');
    expect(textOf(plainDisplay, other, 'overTime', 'display')).toBe(
      'Display named: QZV LUMEN WALL 9 before, QZV 7 now.',
    );
    expect(textOf(plainDisplay, other, 'overTime', 'physicalAddress')).toBe(
      'CEC address: 1.0.0.0 before, 2.1.0.0 now.',
    );
  });

  it('says that only bytes differ where nothing a source decides by does', () => {
    const later: Edid = {
      ...wallDisplay,
      base: { ...wallDisplay.base, manufacture: { kind: 'made', week: 13, year: 2024 } },
    };
    expect(compareEdids(wallDisplay, later, 'overTime')).toEqual([
      {
        topic: 'bytesOnly',
        change: 'changed',
        first: null,
        second: null,
        text: 'The bytes have changed, but nothing that a source decides by.',
      },
    ]);
  });
});

const dummies = [{ kind: 'dummy' as const }, { kind: 'dummy' as const }];
