import type { Place } from '../../../shared/contract/chain.ts';
import type { ChangeKind, ChangeRecord } from '../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import type { Plan } from '../../../shared/isolation/index.ts';

/** Whether a change is made to one part and what joins it: what it takes away lay there. Others take out a stretch. */
export const isOfOnePart = (kind: ChangeKind): boolean =>
  Object.keys(changeCatalogue[kind].effects).every((reach) => reach === 'target' || reach === 'ends');

/**
 * Where the fault lies by a change that took it away: at its target, or, where the change took more than that out of the
 * way or eased it, at what is likeliest by all that is known.
 */
export function partShownBy({ kind, target }: ChangeRecord, { suspects }: Plan): Place {
  return isOfOnePart(kind) ? target : (suspects.find(({ place }) => place !== null)?.place ?? target);
}
