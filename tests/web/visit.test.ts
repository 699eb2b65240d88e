import { describe, expect, it, vi } from 'vitest';
import { boatHouse, gableRoom } from '../../seed/chains.ts';
import { chainFaults } from '../../shared/chain/validate.ts';
import { chain as chainForm } from '../../shared/contract/chain.ts';

vi.stubGlobal('localStorage', { getItem: () => null, setItem: () => undefined });
vi.stubGlobal('navigator', { languages: ['en'] });
vi.stubGlobal('document', { documentElement: { lang: '' } });
const { corrected, valuesAt } = await import('../../src/web/technician/corrections.ts');
const { lengthFrom } = await import('../../src/web/technician/common/length.ts');
const { settingFrom } = await import('../../src/web/technician/common/last-known.ts');
const { visitGroupOf } = await import('../../src/web/technician/visit-group.ts');

const gable = chainForm.parse(gableRoom);
const c5 = { kind: 'link', linkId: 'C5' } as const;
const projector = { kind: 'device', deviceId: 'projector' } as const;

describe('a correction of the description', () => {
  it('changes what was typed and nothing else, and leaves a chain that can be stored', () => {
    const after = corrected(gable, c5, { lengthM: '13,5', certified: 'yes', sinkSeated: 'no' });
    expect(chainFaults(after)).toEqual([]);
    expect(chainForm.parse(after)).toEqual(after);
    const [before, now] = [gable, after].map(({ links }) => links.find(({ id }) => id === 'C5'));
    expect(now).toEqual({
      ...before,
      lengthM: 13.5,
      certified: true,
      sinkEnd: { ...before?.sinkEnd, seated: 'no' },
    });
    expect({ ...after, links: [] }).toEqual({ ...gable, links: [] });
    expect(after.links.filter(({ id }) => id !== 'C5')).toEqual(gable.links.filter(({ id }) => id !== 'C5'));
  });

  it('is nothing when the form says what the description says, at every place of two chains', () => {
    for (const chain of [gable, chainForm.parse(boatHouse)]) {
      for (const { id } of chain.links) {
        const place = { kind: 'link', linkId: id } as const;
        expect(corrected(chain, place, valuesAt(chain, place))).toEqual(chain);
      }
      for (const { id } of chain.devices) {
        const place = { kind: 'device', deviceId: id } as const;
        expect(corrected(chain, place, valuesAt(chain, place))).toEqual(chain);
      }
    }
  });

  it('takes an emptied field for not known', () => {
    const after = corrected(gable, projector, { serial: '  ' });
    expect(after.devices.find(({ id }) => id === 'projector')?.serial).toBeNull();
  });

  it('knows a length from what is none', () => {
    expect(['12', ' 7.5 ', '7,5', '0', '-2', '', 'long', '1001', 'Infinity'].map(lengthFrom)).toEqual([
      12,
      7.5,
      7.5,
      null,
      null,
      null,
      null,
      null,
      null,
    ]);
  });
});

describe('a setting as it was typed', () => {
  it('keeps the kind that it had before, so that before and after can be compared', () => {
    expect(settingFrom(' off ', 'on')).toBe('off');
    expect(settingFrom('5', 4)).toBe(5);
    expect(settingFrom('5,5', 4)).toBe(5.5);
    expect(settingFrom('5', '4')).toBe('5');
    expect(settingFrom('false', true)).toBe(false);
    expect(settingFrom('auto', 4)).toBe('auto');
    expect(settingFrom('auto', true)).toBe('auto');
    expect(settingFrom('5', undefined)).toBe('5');
  });
});

describe('where a visit stands on the list', () => {
  const now = '2026-11-25T23:30:00.000Z';
  it('goes by the day in the zone, not in UTC', () => {
    expect(visitGroupOf('2026-11-26T08:00:00.000Z', now, 'Europe/Dublin')).toBe('coming');
    // In Helsinki it is the 26th already.
    expect(visitGroupOf('2026-11-26T08:00:00.000Z', now, 'Europe/Helsinki')).toBe('today');
    expect(visitGroupOf('2026-11-25T08:00:00.000Z', now, 'Europe/Helsinki')).toBe('earlier');
    expect(visitGroupOf('2026-11-25T08:00:00.000Z', now, 'Europe/Dublin')).toBe('today');
    expect(visitGroupOf(null, now, 'Europe/Dublin')).toBe('undated');
  });
});
