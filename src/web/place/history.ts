import type { Place } from '../../../shared/contract/chain.ts';
import type { ChangeRecord } from '../../../shared/contract/change.ts';
import type { ChainVersionRef } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { Culprit, Remedy } from '../../../shared/contract/triage.ts';
import type { Message } from '../../../shared/message/index.ts';
import { belongsTo } from './belongs-to.ts';

type Of = { at: string; ticket: { id: string; number: number } };
/** One thing that happened to a device or cable before: found at fault, replaced or changed in a ticket, or in the chain. */
export type Past =
  | (Of & { kind: 'culprit'; culprit: Culprit; remedy: Remedy | null })
  | (Of & { kind: 'suspicion'; remedy: Remedy })
  | (Of & { kind: 'change'; change: ChangeRecord })
  | { kind: 'version'; at: string; version: number; by: string; changes: Message[] };

/**
 * What happened at a device or cable before, newest first: causes and changes of tickets, and what versions of its chain
 * made another. What was withdrawn before it was done is none; the first version describes, and changes nothing.
 */
export function historyAt(
  place: Place,
  tickets: readonly Ticket[],
  versions: readonly ChainVersionRef[],
): Past[] {
  return [
    ...tickets.flatMap((ticket) => ofTicket(place, ticket)),
    ...versions.flatMap(({ version, changedAt, changedByName, changes }): Past[] => {
      const here = version === 1 ? [] : changes.filter(({ values }) => isSaidOf(values, place));
      return here.length === 0
        ? []
        : [{ kind: 'version', at: changedAt, version, by: changedByName, changes: here }];
    }),
  ].toSorted((one, other) => (one.at < other.at ? 1 : one.at > other.at ? -1 : 0));
}

function ofTicket(place: Place, { id, number, triage }: Ticket): Past[] {
  const ticket = { id, number };
  const { culprit, remedy, changes } = triage;
  const past: Past[] = changes
    .filter(({ target, appliedAt }) => appliedAt !== null && belongsTo(target, place))
    .map((change) => ({ kind: 'change', at: change.appliedAt ?? change.declaredAt, ticket, change }));
  if (culprit !== null && belongsTo(culprit.place, place))
    past.push({ kind: 'culprit', at: triage.closedAt ?? culprit.at, ticket, culprit, remedy });
  else if (remedy?.kind === 'onSuspicion' && belongsTo(remedy.place, place))
    past.push({ kind: 'suspicion', at: remedy.acceptedAt, ticket, remedy });
  return past;
}

/** Whether a message names the place: a device, one of its sockets, or a cable; a cable's own ends are not meant. */
function isSaidOf(value: unknown, place: Place): boolean {
  if (typeof value !== 'object' || value === null) return false;
  if ('linkId' in value) return place.kind === 'link' && value.linkId === place.linkId;
  if ('deviceId' in value && value.deviceId !== undefined)
    return place.kind === 'device' && value.deviceId === place.deviceId;
  return Object.values(value).some((part) => isSaidOf(part, place));
}
