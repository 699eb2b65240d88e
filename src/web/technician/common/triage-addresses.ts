import { placeKey } from '../../../../shared/chain/place.ts';
import type { Place } from '../../../../shared/contract/chain.ts';

/** Where the screens of a ticket's triage are. */
export const triageAddress = (
  ticketId: string,
  page?:
    | 'changes'
    | 'kit'
    | 'escalate'
    | 'logs'
    | 'watches'
    | 'looks'
    | 'culprit'
    | 'leave-in'
    | 'wait'
    | 'late-change',
): string => `/app/visits/${ticketId}/triage${page === undefined ? '' : `/${page}`}`;

/** A kind of change at a place; `ownKindId` says which of the organisation's own kinds it is. */
type ChangeThere = { kind: string; target: Place; ownKindId?: string | null };

/** Where a change is declared. An organisation's own kind is named by its id after a dot. */
export const declareAddress = (ticketId: string, { kind, target, ownKindId = null }: ChangeThere): string =>
  `/app/visits/${ticketId}/triage/declare/${ownKindId === null ? kind : `${kind}.${ownKindId}`}/${encodeURIComponent(placeKey(target))}`;

/** The kind that the address of a declaration names, with the id of the organisation's own kind. */
export function kindOf(named: string): { kind: string; ownKindId: string | null } {
  const [kind = '', ownKindId = null] = named.split('.');
  return { kind, ownKindId };
}

/** The form to let a ticket wait, with what is known of it filled in. @param until UTC; nothing: nobody knows yet */
export function waitAddress(ticketId: string, { kind, until }: { kind: string; until?: string }): string {
  const query = new URLSearchParams({ kind, ...(until === undefined ? {} : { until }) });
  return `${triageAddress(ticketId, 'wait')}?${query}`;
}

/** The place that a key names; null where it is none. See placeKey in shared/chain/place.ts. */
export function placeOf(key: string): Place | null {
  const [kind, id = '', portId = ''] = key.split(':');
  if (kind === 'chain') return { kind };
  if (id === '') return null;
  if (kind === 'device') return { kind, deviceId: id };
  if (kind === 'link') return { kind, linkId: id };
  return kind === 'port' && portId !== '' ? { kind, deviceId: id, portId } : null;
}
