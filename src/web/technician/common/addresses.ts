import { placeKey } from '../../../../shared/chain/place.ts';
import type { Place } from '../../../../shared/contract/chain.ts';

type Part = 'firmware' | 'settings' | 'files' | 'photos';

export const visitAddress = (ticketId: string): string => `/app/visits/${ticketId}`;
/** Everything of one device or cable; `part` opens that part of the page. */
export const placeAddress = (ticketId: string, place: Place, part?: Part): string =>
  `/app/visits/${ticketId}/place/${encodeURIComponent(placeKey(place))}${part === undefined ? '' : `#${part}`}`;
export const describeAddress = (ticketId: string, place: Place): string =>
  `/app/visits/${ticketId}/describe/${encodeURIComponent(placeKey(place))}`;
export const diaryAddress = (ticketId: string): string => `/app/visits/${ticketId}/diary`;
/** What the client reads and signs. */
export const reportAddress = (ticketId: string): string => `/app/visits/${ticketId}/report`;
export const evidenceAddress = (ticketId: string, part?: 'log'): string =>
  `/app/visits/${ticketId}/evidence${part === undefined ? '' : `#${part}`}`;
