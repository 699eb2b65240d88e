import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Circumstances } from '../../../../shared/isolation/candidates.ts';
import { session } from '../../api/session.ts';
import { memberDatabase } from '../../store/member-database.ts';
import { useKit } from '../common/kit.ts';

/** How many people there are, and what the client won't have; kept on this device, for each ticket. */
type Said = Pick<Circumstances, 'people' | 'refused'>;
const nothingSaid: Said = { people: 1, refused: [] };

const all = signal<ReadonlyMap<string, Said>>(new Map());
const keyOf = (ticketId: string): string => `here ${ticketId}`;
let heldFor: string | null = null;

/** What is at hand on a ticket's site; at first everything, for one person. */
export function useHere(ticketId: string): Circumstances {
  const memberId = session.value?.member.id ?? null;
  const { ticked } = useKit(ticketId);
  useEffect(() => {
    if (heldFor !== memberId) all.value = new Map();
    heldFor = memberId;
    if (all.peek().has(ticketId)) return;
    void memberDatabase()
      .then((database) => database?.get('drafts', keyOf(ticketId)))
      .then((kept) => {
        if (kept !== undefined && !all.peek().has(ticketId)) hold(ticketId, kept as Said);
      });
  }, [ticketId, memberId]);
  return { kit: ticked, ...(all.value.get(ticketId) ?? nothingSaid) };
}

function hold(ticketId: string, said: Said): void {
  all.value = new Map([...all.peek(), [ticketId, said]]);
}

export async function changeHere(ticketId: string, part: Partial<Said>): Promise<void> {
  const said = { ...(all.peek().get(ticketId) ?? nothingSaid), ...part };
  hold(ticketId, said);
  await (await memberDatabase())?.put('drafts', said, keyOf(ticketId));
}
