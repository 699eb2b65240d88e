import type { Chain } from '../../../../shared/contract/chain.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { Facts } from '../../parts/card.tsx';
import { terms } from '../../words/terms.ts';
import { number } from '../../words/times.ts';
import { callWords } from '../call/words.ts';
import { ticketWords } from './words.ts';

/** What was told in the call, to read. What was not asked is left out. */
export function IntakeFacts({ ticket, chain }: { ticket: Ticket; chain: Chain | null }) {
  const [t, c] = [ticketWords(), callWords()];
  const { intake, triage } = ticket;
  const { kind, perHour, lastsS } = triage.symptom;
  const names = (ids: readonly string[]) =>
    ids.map((id) => chain?.devices.find((device) => device.id === id)?.name ?? id).join(', ');
  const changed = triage.whatChanged?.answers ?? intake.whatChanged;
  const { name, phone, relation } = intake.reporter;
  return (
    <Facts
      facts={[
        [c.see, terms().symptom[kind]],
        [t.often, perHour === null ? '' : t.perHour(number(perHour, 2))],
        [t.lasts, lastsS === null ? '' : t.seconds(number(lastsS, 1))],
        [c.sources, names(intake.affectedSources)],
        [c.displays, names(intake.affectedDisplays)],
        [c.contentQ, intake.content === 'notKnown' ? '' : c.content[intake.content]],
        [c.contentText, intake.affectedContent],
        [c.momentQ, intake.moment === 'notKnown' ? '' : c.moment[intake.moment]],
        [c.since, intake.since],
        [c.worked, intake.workedBefore === null ? '' : c.yesNo[intake.workedBefore ? 'yes' : 'no']],
        [
          c.changedQ,
          changed
            .map((one) => [c.changed[one.kind], one.text, one.when].filter((part) => part).join(', '))
            .join('; '),
        ],
        [c.tried, intake.triedOnPhone === '' ? '' : <span class="kept-lines">{intake.triedOnPhone}</span>],
        [t.caller, [name, phone, relation].filter((part) => part !== '').join(', ')],
        [c.notes, intake.notes],
      ]}
    />
  );
}
