import type { Judgement } from '../../../shared/contract/change.ts';
import type { Remedy } from '../../../shared/contract/triage.ts';
import { wordsOf } from './language.ts';

type EndedWords = {
  kinds: Record<Remedy['kind'], string>;
  verdicts: Record<Judgement['verdict'], string>;
};
const en: EndedWords = {
  kinds: {
    permanent: 'Repaired for good',
    workaround: 'Workaround, accepted',
    noFaultFound: 'No fault found',
    onSuspicion: 'Replaced on suspicion, unproven',
  },
  verdicts: {
    cleared: 'the fault stayed away',
    persists: 'the fault was still there',
    inconclusive: 'it settled nothing',
  },
};
const de: EndedWords = {
  kinds: {
    permanent: 'Auf Dauer repariert',
    workaround: 'Behelf, angenommen',
    noFaultFound: 'Kein Fehler gefunden',
    onSuspicion: 'Auf Verdacht getauscht, unbewiesen',
  },
  verdicts: {
    cleared: 'der Fehler blieb weg',
    persists: 'der Fehler war noch da',
    inconclusive: 'es hat nichts geklärt',
  },
};
/** Kinds of remedy, and what a retest said, as on a report. */
export const endedWords = wordsOf({ en, de });
