import type { Due } from '../../../shared/contract/triage.ts';
import { Badge } from '../parts/notice.tsx';
import { wordsOf } from '../words/language.ts';
import { day } from '../words/times.ts';

/** Apart from the other words of waiting, since the first screen that a phone loads shows it. */
const dueWords = wordsOf({
  en: {
    wait: (day: string) => `Waits until ${day}`,
    waitOver: (day: string) => `Overdue since ${day}`,
    followUp: (day: string) => `Ask how the repair holds: ${day}`,
    followUpOver: (day: string) => `Ask how the repair holds: due since ${day}`,
  },
  de: {
    wait: (day) => `Wartet bis ${day}`,
    waitOver: (day) => `Überfällig seit ${day}`,
    followUp: (day) => `Nachfragen, ob die Reparatur hält: ${day}`,
    followUpOver: (day) => `Nachfragen, ob die Reparatur hält: fällig seit ${day}`,
  },
});

/** Whether somebody should have seen to it by now. */
export const isOverdue = (due: Due | null, now: string): boolean => due !== null && due.by < now;

/** What is due on a ticket in a list, and whether it is overdue; nothing where nothing is due. */
export function DueBadge({ due, zone }: { due: Due | null; zone: string }) {
  const t = dueWords();
  if (due === null) return null;
  const late = isOverdue(due, new Date().toISOString());
  const say = t[late ? (`${due.kind}Over` as const) : due.kind];
  return <Badge tone={late ? 'caution' : 'plain'}>{say(day(due.by, zone))}</Badge>;
}
