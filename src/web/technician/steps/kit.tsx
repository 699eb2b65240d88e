import type { ChangeKind } from '../../../../shared/contract/change.ts';
import type { Circumstances } from '../../../../shared/isolation/candidates.ts';
import { kitFor } from '../../../../shared/isolation/change-at.ts';
import { type KitItem, kitKey, kitMessage } from '../../../../shared/isolation/kit.ts';
import { conceivableChangesOf } from '../../../../state-machines/triage/changes/applicable.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Choices } from '../../parts/field.tsx';
import { Screen } from '../../parts/screen.tsx';
import { changeWords } from '../../words/change-words.ts';
import { inWords } from '../../words/sentence.tsx';
import { useKit } from '../common/kit.ts';
import { placeWords } from '../common/place-words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { changeHere, useHere } from './here.ts';
import { kitWords } from './kit-words.ts';
import { TicketPage } from './page.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** What the plan may ask for: what is in the van, how many people there are, and what the client won't have. */
export function KitScreen({ ticketId = '' }: { ticketId?: string }) {
  return <TicketPage ticketId={ticketId}>{(work) => <Kit work={work} />}</TicketPage>;
}

/** Everything that a change on this chain could take, each thing once. */
function itemsFor({ ticket, chain }: Work): KitItem[] {
  const items = conceivableChangesOf(ticket.triage, chain).flatMap(({ kind, target }) =>
    kitFor(chain, kind, target),
  );
  const source: KitItem = { kind: 'source' };
  const distinct = new Map([...items, source].map((item) => [kitKey(item), item]));
  return [...distinct.values()];
}

function Kit({ work }: { work: Work }) {
  const t = kitWords();
  const { id } = work.ticket;
  const here = useHere(id);
  const items = itemsFor(work);
  const kit = useKit(id);
  return (
    <Screen title={t.title}>
      <p>{t.lead}</p>
      <Choices
        label={t.title}
        value={kit.ticked === null ? 'all' : 'only'}
        onChoose={(choice) => void kit.setAll(choice === 'all' ? null : [])}
        options={[
          { value: 'all', label: t.all },
          { value: 'only', label: t.only },
        ]}
      />
      {kit.ticked !== null && (
        <fieldset class="choices field">
          <legend>{t.items}</legend>
          {items.map((item) => (
            <label class="choice" key={kitKey(item)}>
              <input
                type="checkbox"
                checked={kit.has(item)}
                onChange={({ currentTarget }) => void kit.tick(item, currentTarget.checked)}
              />
              {inWords(kitMessage(item))}
            </label>
          ))}
        </fieldset>
      )}
      <Choices
        label={t.people}
        value={here.people === 1 ? 'one' : 'two'}
        onChoose={(people) => void changeHere(id, { people: people === 'one' ? 1 : 2 })}
        options={[
          { value: 'one', label: t.one },
          { value: 'two', label: t.two },
        ]}
      />
      {here.refused.length > 0 && <Refused work={work} here={here} />}
      <div>
        <LinkButton href={triageAddress(id)} kind="primary" large>
          {triageWords().toQuestion}
        </LinkButton>
      </div>
    </Screen>
  );
}

function Refused({ work, here }: { work: Work; here: Circumstances }) {
  const t = kitWords();
  const allow = (at: number) =>
    void changeHere(work.ticket.id, { refused: here.refused.filter((_, other) => other !== at) });
  return (
    <section>
      <h2>{t.refused}</h2>
      <ul class="list">
        {here.refused.map(({ test, place }, at) => (
          <li key={`${test} ${JSON.stringify(place)}`} class="row">
            <span>
              {t.at(
                test === 'menu' || test === undefined
                  ? t.menu
                  : changeWords({ kind: test satisfies ChangeKind }),
                place === undefined ? '' : placeWords(work.chain, place),
              )}
            </span>
            <Button onClick={() => allow(at)}>{t.allow}</Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
