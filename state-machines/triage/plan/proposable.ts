import { samePlace } from '../../../shared/chain/place.ts';
import type { ChangeRecord, TriageRecord } from '../../../shared/contract/triage.ts';
import type { Made } from '../changes/own.ts';
import { changesOfRound } from '../record.ts';

/** A change that told nothing twice is not proposed a third time; assumed. */
const enoughInVain = 2;

const toldSomething = ({ judgement }: ChangeRecord): boolean =>
  judgement?.attributable === true && judgement.verdict !== 'inconclusive';

/**
 * Whether a change is worth proposing once more in this round: one that was withdrawn could not be made here, and one
 * that showed the fault, or took it away, has nothing more to tell. It can still be declared by hand.
 */
export function isWorthProposing(record: TriageRecord, { kind, target, own }: Made): boolean {
  const made = changesOfRound(record).filter(
    (each) => each.kind === kind && each.own?.id === own?.id && samePlace(each.target, target),
  );
  const finished = made.filter(({ status }) => status === 'restored' || status === 'kept');
  return (
    !made.some(({ status }) => status === 'withdrawn') &&
    !finished.some(toldSomething) &&
    finished.length < enoughInVain
  );
}
