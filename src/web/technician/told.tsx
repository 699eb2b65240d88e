import { findDevice } from '../../../shared/chain/look-up.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { onlyWithSaid, patternSaid } from '../../../shared/isolation/pattern.ts';
import { Facts } from '../parts/card.tsx';
import { typed, typedInRow } from '../parts/typed.tsx';
import { inWords } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { number } from '../words/times.ts';
import { technicianWords } from './words.ts';

/** The call, as the dispatcher wrote it down. */
export function Told({ ticket, chain }: { ticket: Ticket; chain: Chain | null }) {
  const t = technicianWords();
  const { intake } = ticket;
  const { perHour, lastsS, pattern, onlyWith } = intake.symptom;
  const nameOf = (id: string) => (chain === null ? id : (findDevice(chain, id)?.name ?? id));
  const { name, relation, phone } = intake.reporter;
  return (
    <Facts
      facts={[
        [t.reporter, typedInRow([name, relation, phone])],
        [
          t.symptom,
          [
            terms().symptom[intake.symptom.kind],
            perHour === null ? '' : t.perHour(number(perHour, 1)),
            lastsS === null ? '' : t.lasts(number(lastsS, 1)),
          ]
            .filter((part) => part !== '')
            .join(', '),
        ],
        [t.howItComes, pattern.kind === 'notKnown' ? '' : inWords(patternSaid(pattern))],
        [t.onlyWith, onlyWith === null ? '' : inWords(onlyWithSaid(onlyWith))],
        [t.sources, intake.affectedSources.map(nameOf).join(', ')],
        [t.displays, intake.affectedDisplays.map(nameOf).join(', ')],
        [t.affectedContent, typed(intake.affectedContent)],
        [t.since, typed(intake.since)],
        [t.workedBefore, intake.workedBefore === null ? '' : intake.workedBefore ? t.yes : t.no],
        [
          t.changed,
          intake.whatChanged.map(({ kind, text, when }, at) => [
            at > 0 && '; ',
            typedInRow([terms().whatChanged[kind], text, when]),
          ]),
        ],
        [t.tried, typed(intake.triedOnPhone)],
        [t.notes, typed(intake.notes)],
      ]}
    />
  );
}
