import { mostRequests } from '../../../shared/contract/limits.ts';
import type { CompletenessItem, MissingItem } from '../../../shared/contract/triage.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { useDraftForm } from '../store/use-draft.ts';
import { said } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { actionWords } from './action-words.ts';
import type { CaseFacts } from './case-facts.ts';
import type { FormProperties } from './form-properties.ts';

/** A request that can be ticked, in words that become the asker's own. */
type Asked = { item: MissingItem['item']; text: string };
/** No more than this in one go, as the contract has it. */

/** What can be ticked: what is missing, what was waived, and everything else there is to a case. */
function offers({ ticket }: CaseFacts): Asked[] {
  const t = actionWords();
  const missing = ticket.missing.map(({ item, text }) => ({ item, text: said(text).text }));
  const waivers = ticket.triage.escalations.at(-1)?.waivers ?? [];
  const waived = waivers
    .filter(({ item }) => !missing.some((each) => each.item === item))
    .map(({ item, reason }) => ({ item, text: t.waivedBecause(reason) }));
  const named = new Set([...missing, ...waived].map(({ item }) => item));
  const others = (Object.keys(terms().completenessItem) as CompletenessItem[])
    .filter((item) => !named.has(item))
    .map((item) => ({ item, text: t.asks[item] }));
  return [...missing, ...waived, ...others];
}

export function AskForm({ facts, send, isBusy }: FormProperties) {
  const t = actionWords();
  const [draft, change, forget] = useDraftForm(`ask ${facts.ticket.id}`, {
    ticked: [] as string[],
    questions: [''],
  });
  const all = offers(facts);
  const keyOf = ({ item, text }: Asked) => `${item} ${text}`;
  const questions = draft.questions.map((text) => text.trim()).filter((text) => text !== '');
  const requests = [
    ...all.filter((each) => draft.ticked.includes(keyOf(each))),
    ...questions.map((text) => ({ item: null, text })),
  ];
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void send({ type: 'askForMore', requests }).then((isAccepted) => (isAccepted ? forget() : undefined));
      }}
    >
      <fieldset class="choices field">
        <legend>{t.tickWhatIsMissing}</legend>
        {all.map((each) => (
          <label class="choice" key={keyOf(each)}>
            <input
              type="checkbox"
              checked={draft.ticked.includes(keyOf(each))}
              onChange={({ currentTarget }) =>
                change({
                  ticked: currentTarget.checked
                    ? [...draft.ticked, keyOf(each)]
                    : draft.ticked.filter((key) => key !== keyOf(each)),
                })
              }
            />
            <span>
              <strong>{terms().completenessItem[each.item]}</strong> {each.text}
            </span>
          </label>
        ))}
      </fieldset>
      {draft.questions.map((question, at) => (
        <TextField
          key={at}
          label={t.ownQuestionNo(at + 1)}
          optional
          rows={3}
          value={question}
          onInput={({ currentTarget }) =>
            change({ questions: draft.questions.with(at, currentTarget.value) })
          }
        />
      ))}
      <Button onClick={() => change({ questions: [...draft.questions, ''] })}>{t.anotherQuestion}</Button>
      <Button
        type="submit"
        kind="primary"
        disabled={isBusy || requests.length === 0 || requests.length > mostRequests}
      >
        {requests.length === 0 ? t.tickOne : t.askFor(requests.length)}
      </Button>
    </form>
  );
}
