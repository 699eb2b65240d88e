import { placeKey } from '../../../../shared/chain/place.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { ChangeRecord } from '../../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../../shared/isolation/change-catalogue.ts';

/** From this chance on of taking away whatever ails a part, a change that did not take the fault away acquits it; assumed. */
const acquitsFrom = 0.8;

/** Whether a change takes its target out of the way whole, so that a fault that stays is not the target's. */
function acquits({ kind, own, judgement, round }: ChangeRecord, now: number): boolean {
  if (round !== now || judgement?.verdict !== 'persists' || !judgement.attributable) return false;
  const figures =
    own === null ? Object.values(changeCatalogue[kind].effects.target?.figures ?? {}) : [own.keepsAway ?? 0];
  return figures.length > 0 && Math.min(...figures) >= acquitsFrom;
}

/** What changes of this round have acquitted, each place once, by its key, with the change that did so last. */
export const acquittals = ({ triage }: CaseFile): Map<string, ChangeRecord> =>
  new Map(
    triage.changes
      .filter((change) => acquits(change, triage.round))
      .map((change) => [placeKey(change.target), change]),
  );
