import type { ComponentChildren } from 'preact';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { minutesOf, occurrencesIn, verifyWatches } from '../../../state-machines/triage/record.ts';
import { Facts } from '../parts/card.tsx';
import { typed } from '../parts/typed.tsx';
import { placeWord } from '../place/place-words.ts';
import { endedWords } from '../words/ended-words.ts';
import { dayAndTime, lengthOfTime } from '../words/times.ts';
import { endWords } from './words.ts';

type Known = { triage: TriageRecord; chain: Chain | null };

/** The culprit, what was done about it, how that is known, and when the ticket was closed; nothing where none is known. */
export function HowItEnded({ triage, chain, zone }: Known & { zone: string }) {
  const t = endWords();
  const { culprit, remedy, closing, closedAt } = triage;
  if (culprit === null && remedy === null && closedAt === null) return null;
  return (
    <Facts
      facts={[
        [t.culprit, culpritOf({ triage, chain })],
        [t.remedy, remedyOf({ triage, chain })],
        [t.limits, remedy?.kind === 'workaround' ? typed(remedy.limits) : null],
        [t.proof, proofOf(triage)],
        [t.anyway, closing?.override == null ? null : typed(closing.override.reason)],
        [t.closed, closedAt === null ? null : dayAndTime(closedAt, zone)],
        [t.note, closing === null ? null : typed(closing.note)],
      ]}
    />
  );
}

/** The chain that names a ticket's places: its own, as it was left or found, else as it is known now. */
const namedBy = ({ triage: { asLeft, asFound }, chain }: Known): Chain | null =>
  asLeft?.chain ?? asFound?.chain ?? chain;

export function culpritOf({ triage, chain }: Known): ComponentChildren {
  const { culprit } = triage;
  const named = namedBy({ triage, chain });
  if (culprit === null || named === null) return null;
  return (
    <>
      <strong>{placeWord(named, culprit.place)}</strong>
      {culprit.explanation !== '' && <> · {typed(culprit.explanation)}</>}
    </>
  );
}

export function remedyOf({ triage, chain }: Known): ComponentChildren {
  const { remedy } = triage;
  const named = namedBy({ triage, chain });
  if (remedy === null) return null;
  const t = endWords();
  return (
    <>
      {remedy.kind === 'onSuspicion' && named !== null && <>{placeWord(named, remedy.place)} · </>}
      {endedWords().kinds[remedy.kind]}: {typed(remedy.what)}
      {'acceptedBy' in remedy && <> ({t.acceptedBy(remedy.acceptedBy)})</>}
    </>
  );
}

/** What was watched after the remedy so far, or quietly where no fault was found; null where there is no remedy. */
export function proofOf(triage: TriageRecord): ComponentChildren {
  const t = endWords();
  const quietMin = triage.quietProof?.watchedMin;
  if (typeof quietMin === 'number') return t.watched(lengthOfTime(quietMin), 0);
  const proof = triage.closing === null ? watchedSince(triage) : triage.closing.proof;
  if (proof === null || proof === 'notRecorded') return null;
  return proof.watchedMin === 0 && proof.occurrences === 0
    ? t.notWatched
    : t.watched(lengthOfTime(proof.watchedMin), proof.occurrences);
}

/** What the watches since the remedy say while the ticket is open. */
function watchedSince(triage: TriageRecord): { watchedMin: number; occurrences: number } | null {
  if (triage.asLeft === null) return null;
  const watches = verifyWatches(triage);
  const watchedMin = watches.reduce((sum, watch) => sum + minutesOf(watch), 0);
  return { watchedMin, occurrences: occurrencesIn(watches).length };
}
