import type { ChangeRecord } from '../../../shared/contract/change.ts';
import { wordsOf } from '../words/language.ts';

type HistoryWords = {
  title: string;
  none: string;
  reading: string;
  ticket: (number: number) => string;
  culprit: string;
  suspicion: string;
  statuses: Partial<Record<ChangeRecord['status'], string>>;
  version: (version: number, by: string) => string;
  newest: (count: number) => string;
};
const en: HistoryWords = {
  title: 'Before',
  none: 'No ticket or version of the chain changed anything here or found a fault here.',
  reading: 'Reading earlier tickets',
  ticket: (number) => `Ticket no. ${number}`,
  culprit: 'This was the cause',
  suspicion: 'Replaced on suspicion',
  statuses: { restored: 'put back as it was', kept: 'left in' },
  version: (version, by) => `Version ${version} of the chain, by ${by}`,
  newest: (count) => `Only the newest ${count} tickets of this chain were looked through.`,
};
const de: HistoryWords = {
  title: 'Vorher',
  none: 'Kein Ticket und keine Fassung der Kette hat hier etwas geändert oder einen Fehler gefunden.',
  reading: 'Frühere Tickets werden gelesen',
  ticket: (number) => `Ticket Nr. ${number}`,
  culprit: 'Das war die Ursache',
  suspicion: 'Auf Verdacht getauscht',
  statuses: { restored: 'zurückgebaut', kept: 'so gelassen' },
  version: (version, by) => `Fassung ${version} der Kette, von ${by}`,
  newest: (count) => `Nur die neuesten ${count} Tickets dieser Kette wurden durchgesehen.`,
};
/** Words of what happened at a device or cable before. */
export const historyWords = wordsOf({ en, de });
