import { describe, expect, it } from 'vitest';
import { nearestAt, wallClock } from '../../src/web/technician/steps/time-of-day.ts';

const zone = 'Europe/Dublin';

describe('a time on the wall, near a moment', () => {
  it('is on the same day, with the parts of a second that no clock shows', () => {
    const near = '2026-07-02T12:05:30.250Z';
    expect(wallClock(near, zone)).toBe('13:05:30');
    expect(nearestAt('13:05:30', near, zone)).toBe(near);
    expect(nearestAt('12:59', near, zone)).toBe('2026-07-02T11:59:00.250Z');
  });

  it('is just across midnight where that is nearer', () => {
    expect(nearestAt('23:58:00', '2026-11-02T00:03:00.000Z', zone)).toBe('2026-11-01T23:58:00.000Z');
    expect(nearestAt('00:01:00', '2026-11-01T23:58:00.000Z', zone)).toBe('2026-11-02T00:01:00.000Z');
  });

  it('is right on the day on which the clocks change: Dublin goes back at 01:00 UTC on 25 October 2026', () => {
    expect(nearestAt('03:00:00', '2026-10-25T00:30:00.000Z', zone)).toBe('2026-10-25T03:00:00.000Z');
  });

  it('is nothing where it is no time', () => {
    for (const time of ['', '25:00', '12:60', 'noon'])
      expect(nearestAt(time, '2026-07-02T12:00:00.000Z', zone)).toBeNull();
  });
});
