import { DateTime } from 'luxon';
import { firmZone } from './firm.ts';

/** A clock that a story moves: the demo's hours pass without anybody waiting for them. */
export type StoryClock = { now(): Date; to(moment: Date): void; backToReal(): void };

export function storyClock(): StoryClock {
  let told: Date | null = null;
  return {
    now: () => told ?? new Date(),
    to: (moment) => {
      told = moment;
    },
    backToReal: () => {
      told = null;
    },
  };
}

/** In three hours; in the last minute of the firm's day where that would be tomorrow. */
export function laterToday(): string {
  const now = DateTime.now().setZone(firmZone);
  return DateTime.min(now.plus({ hours: 3 }), now.endOf('day'))
    .toJSDate()
    .toISOString();
}
