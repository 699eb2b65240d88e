import { placeKey } from '../../../../shared/chain/place.ts';
import type { Place } from '../../../../shared/contract/chain.ts';

/** Where the screens of a ticket's triage are. */
export const triageAddress = (
  ticketId: string,
  page?: 'changes' | 'kit' | 'escalate' | 'logs' | 'watches' | 'looks' | 'culprit' | 'wait',
): string => `/app/visits/${ticketId}/triage${page === undefined ? '' : `/${page}`}`;

export const declareAddress = (ticketId: string, kind: string, target: Place): string =>
  `/app/visits/${ticketId}/triage/declare/${kind}/${encodeURIComponent(placeKey(target))}`;

/** The form to let a ticket wait, with what is known of it filled in. @param until UTC; nothing: nobody knows yet */
export function waitAddress(ticketId: string, { kind, until }: { kind: string; until?: string }): string {
  const query = new URLSearchParams({ kind, ...(until === undefined ? {} : { until }) });
  return `${triageAddress(ticketId, 'wait')}?${query}`;
}

/** The place that a key names; null where it is none. See placeKey in shared/chain/place.ts. */
export function placeOf(key: string): Place | null {
  const [kind, id = '', portId = ''] = key.split(':');
  if (id === '') return null;
  if (kind === 'device') return { kind, deviceId: id };
  if (kind === 'link') return { kind, linkId: id };
  return kind === 'port' && portId !== '' ? { kind, deviceId: id, portId } : null;
}
