import { describe, expect, it } from 'vitest';
import type { EdidDifference } from '../../../shared/contract/signal.ts';
import { type Message, message } from '../../../shared/message/index.ts';
import { compareEdids, type Edid, limitEdid } from '../../../shared/signal/edid/index.ts';
import { baseBlock, ctaExtension, hdmiBlock, plainDisplay, videoBlock, wallDisplay } from './build-edid.ts';

const textOf = (first: Edid, second: Edid, topic: string) =>
  compareEdids(first, second, 'overTime').find((difference) => difference.topic === topic)?.text;
const notation = (said: string) => message('edid/notation', { said });
const notations = (...said: string[]) => said.map(notation);

const nineGbit = limitEdid(wallDisplay, { maxTmdsCharacterRateMHz: 300, dropFrl: true });

describe('comparing two EDIDs', () => {
  it('finds nothing between an EDID and itself', () => {
    expect(compareEdids(wallDisplay, wallDisplay, 'passedOn')).toEqual([]);
  });

  it('says what a receiver set to 9 Gbit/s takes away', () => {
    const texts = compareEdids(wallDisplay, nineGbit, 'passedOn').map(({ text }) => text);
    const tmds = (rate: number, bitRate: number) => message('edid/tmdsRate', { rate, bitRate });
    const [fast, none] = [{ rate: 40, lanes: 4, lane: 10 }, [] as Message[]];
    const passedOn = (topic: EdidDifference['topic'], display: Message, second: Message[]) =>
      message('edid/atDisplayAndPassedOn', { topic, display: [display], passedOn: second });
    const heldBack = (topic: EdidDifference['topic'], lost: Message[], gained = none) =>
      message('edid/heldBackAndAdded', { topic, lost, gained });
    const highRates = notations('3840x2160p120', '3840x2160p100');
    expect(texts).toEqual([
      passedOn('tmdsRate', tmds(600, 18), [tmds(300, 9)]),
      passedOn('fixedRateLink', message('edid/fixedRate', fast), none),
      passedOn('compression', message('edid/compressionUpTo', fast), none),
      passedOn('preferredTiming', notation('3840x2160p60'), notations('1920x1080p60')),
      heldBack('formats', highRates),
      heldBack('chroma420', highRates),
      heldBack('chroma420Alone', none, notations('3840x2160p60', '3840x2160p50')),
      heldBack('scdc', [message('edid/there')]),
    ]);
  });

  it('says what is gone since before, and what has come', () => {
    const stereo = limitEdid(wallDisplay, { stereoOnly: true, dropHdr: true });
    const hdr = [...notations('PQ', 'HLG'), message('edid/peakLuminance', { luminance: 604 })];
    const [topic, none] = ['hdr' as const, []];
    expect(textOf(wallDisplay, stereo, 'hdr')).toEqual(
      message('edid/lostAndGained', { topic, lost: hdr, gained: none }),
    );
    expect(textOf(stereo, wallDisplay, 'hdr')).toEqual(
      message('edid/lostAndGained', { topic, lost: none, gained: hdr }),
    );
    expect(textOf(wallDisplay, stereo, 'audio')?.values.lost).toContainEqual(
      expect.objectContaining({ values: expect.objectContaining({ format: 'Linear PCM', channels: 8 }) }),
    );
    expect(textOf(wallDisplay, stereo, 'dynamicHdr')?.values.lost).toContainEqual(
      message('edid/vendorVideo', { oui: '02-A1-B2' }),
    );
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
    expect(textOf(plainDisplay, other, 'display')).toEqual(
      message('edid/beforeAndNow', {
        topic: 'display',
        before: [message('edid/name', { name: 'QZV LUMEN WALL 9' })],
        now: [message('edid/name', { name: 'QZV 7' })],
      }),
    );
    expect(textOf(plainDisplay, other, 'physicalAddress')).toEqual(
      message('edid/beforeAndNow', {
        topic: 'physicalAddress',
        before: notations('1.0.0.0'),
        now: notations('2.1.0.0'),
      }),
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
        first: [],
        second: [],
        text: message('edid/onlyBytesChanged'),
      },
    ]);
  });
});

const dummies = [{ kind: 'dummy' as const }, { kind: 'dummy' as const }];
