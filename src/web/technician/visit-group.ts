import { dayKey } from '../words/times.ts';

export type VisitGroup = 'today' | 'earlier' | 'coming' | 'undated';
export const visitGroups: readonly VisitGroup[] = ['today', 'earlier', 'coming', 'undated'];

/** Where a visit belongs on a list that is read at `now`; days are those of `zone`. */
export function visitGroupOf(visitAt: string | null, now: string, zone: string): VisitGroup {
  if (visitAt === null) return 'undated';
  const [day, today] = [dayKey(visitAt, zone), dayKey(now, zone)];
  if (day === today) return 'today';
  return day < today ? 'earlier' : 'coming';
}
