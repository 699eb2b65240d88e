const msPerDay = 86_400_000;

/** A moment (UTC, ISO 8601) as the clock on a wall in a zone shows it, with seconds: `14:05:30`. */
export const wallClock = (moment: string, zone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone: zone, timeStyle: 'medium' }).format(new Date(moment));

const secondsOf = (time: string): number | null => {
  const [, h, m, s = '0'] = /^(\d{1,2}):(\d{2})(?::(\d{2}))?$/.exec(time.trim()) ?? [];
  if (h === undefined || m === undefined) return null;
  const [hours, minutes, seconds] = [Number(h), Number(m), Number(s)];
  return hours < 24 && minutes < 60 && seconds < 60 ? hours * 3600 + minutes * 60 + seconds : null;
};

/**
 * The moment at which a clock on a wall shows a time, nearest to another moment: on the same day or just across
 * midnight. Where clocks change in between, it may be an hour off.
 *
 * @param time `14:05:30` or `14:05`
 * @returns UTC, ISO 8601; null where it is no time
 */
export function nearestAt(time: string, near: string, zone: string): string | null {
  const [wanted, shown] = [secondsOf(time), secondsOf(wallClock(near, zone))];
  if (wanted === null || shown === null) return null;
  const apartMs = (wanted - shown) * 1000;
  const nearestMs = ((((apartMs + msPerDay / 2) % msPerDay) + msPerDay) % msPerDay) - msPerDay / 2;
  // What a clock shows has no parts of a second: they stay.
  return new Date(Date.parse(near) + nearestMs).toISOString();
}
