import { placeKey } from '../../../shared/chain/place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { Values } from './corrections.ts';

/** Corrections that were typed and not sent yet, with the version of the chain that whoever typed them had before them. */
export type CorrectionDraft = { values: Values; basedOn: { version: number; values: Values } | null };
export const noCorrection: CorrectionDraft = { values: {}, basedOn: null };
export const correctionKey = (ticketId: string, place: Place): string =>
  `correction ${ticketId} ${placeKey(place)}`;
