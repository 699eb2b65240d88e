import { describe, expect, it } from 'vitest';
import { endOf, gapMin, townOf } from '../../src/web/dispatcher/board/visit-times.ts';

describe('times and towns of visits', () => {
  it('takes the town from the end of an address, and the whole address where nothing is apart', () => {
    expect(townOf('4 Thistle Rise, Marlhaven')).toBe('Marlhaven');
    expect(townOf('Quay 2,\nSaltmere, ')).toBe('Saltmere');
    expect(townOf('Saltmere')).toBe('Saltmere');
  });

  it('counts from the end of a visit where its length is planned, else from its begin', () => {
    const next = { visitAt: '2026-12-01T10:00:00.000Z', visitMin: null };
    const one = (visitMin: number | null) => ({ visitAt: '2026-12-01T09:00:00.000Z', visitMin });
    expect(endOf(one(90))).toBe('2026-12-01T10:30:00.000Z');
    expect(gapMin(one(90), next)).toBe(-30);
    expect(gapMin(one(45), next)).toBe(15);
    expect(gapMin(one(null), next)).toBe(60);
    expect(gapMin(one(45), { visitAt: null, visitMin: 60 })).toBeNull();
  });
});
