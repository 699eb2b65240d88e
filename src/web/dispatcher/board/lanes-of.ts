import type { TicketSummary } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { useDocument } from '../../store/documents.ts';
import { byBegin } from './visit-times.ts';
import { boardWords } from './words.ts';

/** A person and their visits in order; with nobody's name where visits are assigned to nobody. */
export type Lane = { readonly id: string | null; readonly name: string; readonly own: TicketSummary[] };

/** Whoever can be sent, with their visits; and first, if there are any, the visits that are with nobody. */
export function useLanes(visits: readonly TicketSummary[]): Lane[] {
  const members = useDocument(paths.members).body?.items ?? [];
  const people = members.filter(
    ({ id, role, active }) =>
      (active && role === 'technician') || visits.some(({ assigneeId }) => assigneeId === id),
  );
  const of = (id: string | null) => visits.filter(({ assigneeId }) => assigneeId === id).toSorted(byBegin);
  const unassigned = of(null);
  return [
    ...(unassigned.length > 0 ? [{ id: null, name: boardWords().withNobody, own: unassigned }] : []),
    ...people.map(({ id, name }) => ({ id, name, own: of(id) })),
  ];
}
