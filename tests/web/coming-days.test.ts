import { describe, expect, it } from 'vitest';
import type { TicketSummary } from '../../shared/contract/ticket.ts';
import { comingDays, halvesOf, limitsOf } from '../../src/web/dispatcher/assign/coming-days.ts';

const zone = 'Europe/Dublin';
const visitAt = (moment: string) => ({ id: moment, visitAt: moment }) as TicketSummary;

describe('who could go when', () => {
  it('looks a working week ahead, from today on, without Saturdays and Sundays', () => {
    // 25 November 2026 is a Wednesday.
    expect(comingDays('2026-11-25T10:00:00.000Z', zone)).toEqual([
      '2026-11-25',
      '2026-11-26',
      '2026-11-27',
      '2026-11-30',
      '2026-12-01',
    ]);
    expect(comingDays('2026-11-28T10:00:00.000Z', zone)[0]).toBe('2026-11-30');
  });

  it('takes the day from the clock of the site, not from UTC', () => {
    expect(comingDays('2026-11-25T23:30:00.000Z', 'Asia/Tokyo')[0]).toBe('2026-11-26');
    expect(limitsOf(['2026-11-25', '2026-11-26'], 'Asia/Tokyo')).toEqual({
      from: '2026-11-24T15:00:00.000Z',
      to: '2026-11-26T15:00:00.000Z',
    });
  });

  it('puts each visit into the half of the day in which it begins, also where clocks were changed that week', () => {
    const now = '2026-03-27T10:00:00.000Z';
    // Summer time begins on 29 March 2026: 09:00 in Dublin is 09:00 UTC before it, and 08:00 UTC after.
    const visits = ['2026-03-27T09:30:00.000Z', '2026-03-30T10:59:00.000Z', '2026-03-30T11:00:00.000Z'];
    const [friday, monday] = ['2026-03-27', '2026-03-30'].map((key) =>
      halvesOf(key, visits.map(visitAt), { zone, now }),
    );
    expect(friday).toMatchObject([
      { at: '2026-03-27T09:00:00.000Z', isOver: true, visits: [{ id: visits[0] }] },
      { at: '2026-03-27T13:00:00.000Z', isOver: false, visits: [] },
    ]);
    expect(monday).toMatchObject([
      { begin: '2026-03-30T09:00', at: '2026-03-30T08:00:00.000Z', visits: [{ id: visits[1] }] },
      { begin: '2026-03-30T13:00', at: '2026-03-30T12:00:00.000Z', visits: [{ id: visits[2] }] },
    ]);
  });
});
