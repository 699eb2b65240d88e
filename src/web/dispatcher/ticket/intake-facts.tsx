import type { Chain } from '../../../../shared/contract/chain.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { onlyWithSaid, patternSaid } from '../../../../shared/isolation/pattern.ts';
import { Facts } from '../../parts/card.tsx';
import { typed, typedInRow } from '../../parts/typed.tsx';
import { inWords } from '../../words/sentence.tsx';
import { terms } from '../../words/terms.ts';
import { number } from '../../words/times.ts';
import { patternWords } from '../call/pattern-words.ts';
import { callWords } from '../call/words.ts';
import { deskWords } from '../common/words.ts';
import { ticketWords } from './words.ts';

/** What was told in the call, to read. What was not asked is left out. */
export function IntakeFacts({ ticket, chain }: { ticket: Ticket; chain: Chain | null }) {
  const [t, c, p] = [ticketWords(), callWords(), patternWords()];
  const { intake, triage } = ticket;
  const { kind, perHour, lastsS, pattern, onlyWith } = triage.symptom;
  const names = (ids: readonly string[]) =>
    ids.map((id) => chain?.devices.find((device) => device.id === id)?.name ?? id).join(', ');
  const changed = triage.whatChanged?.answers ?? intake.whatChanged;
  const { name, phone, relation } = intake.reporter;
  return (
    <Facts
      facts={[
        [c.see, terms().symptom[kind]],
        [p.how, pattern.kind === 'notKnown' ? '' : inWords(patternSaid(pattern))],
        [p.onlyWith, onlyWith === null ? '' : inWords(onlyWithSaid(onlyWith))],
        [t.often, perHour === null ? '' : t.perHour(number(perHour, 2))],
        [t.lasts, lastsS === null ? '' : t.seconds(number(lastsS, 1))],
        [c.sources, names(intake.affectedSources)],
        [c.displays, names(intake.affectedDisplays)],
        [c.contentQ, intake.content === 'notKnown' ? '' : c.content[intake.content]],
        [c.contentText, typed(intake.affectedContent)],
        [c.since, typed(intake.since)],
        [c.worked, intake.workedBefore === null ? '' : c.yesNo[intake.workedBefore ? 'yes' : 'no']],
        [
          c.changedQ,
          changed.map((one, at) => [at > 0 && '; ', typedInRow([c.changed[one.kind], one.text, one.when])]),
        ],
        [
          c.tried,
          intake.triedOnPhone === '' ? '' : <span class="kept-lines">{typed(intake.triedOnPhone)}</span>,
        ],
        [t.caller, typedInRow([name, phone, relation])],
        [deskWords().promised, typed(intake.promised)],
        [c.notes, typed(intake.notes)],
      ]}
    />
  );
}
