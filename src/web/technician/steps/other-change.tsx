import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { placeKey } from '../../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import { message } from '../../../../shared/message/message.ts';
import { careFor } from '../../../../state-machines/triage/changes/described.ts';
import { everyPlace } from '../../../../state-machines/triage/changes/places.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Choices, SelectField, TextField } from '../../parts/field.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { inWords } from '../../words/sentence.tsx';
import { placeWords } from '../common/place-words.ts';
import { placeOf, triageAddress } from '../common/triage-addresses.ts';
import { Cautions, Question } from './question.tsx';
import { stepWords } from './step-words.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

type Draft = { what: string; at: string; mayStay: boolean; expected: string | null };

/** A change that no list holds: what it is, what it is made to, whether it may stay, and what is expected of it. */
export function OtherChangeForm({ work, at }: { work: Work; at: Place }) {
  const t = stepWords();
  const { route } = useLocation();
  const { id } = work.ticket;
  const [draft, write, forget] = useDraftForm<Draft>(`declare ${id} otherChange`, {
    what: '',
    at: placeKey(at),
    mayStay: false,
    expected: null,
  });
  const [isLacking, setLacking] = useState(false);
  const target = placeOf(draft.at) ?? at;
  const expected = draft.expected ?? t.expectationPlain;
  const command: TicketCommand = {
    type: 'declareChange',
    kind: 'otherChange',
    target,
    detail: draft.what.trim(),
    expected: expected.trim(),
    settings: [],
    ownKindId: null,
    mayStay: draft.mayStay,
  };
  const isFull = isReason(draft.what) && isReason(expected);
  // What is not filled in yet is said at its field, and only once it is sent.
  const refusal = isFull ? work.refusalOf(command) : null;
  const declare = async () => {
    setLacking(!isFull);
    if (!isFull || !(await work.send(command))) return;
    await forget();
    route(triageAddress(id), true);
  };
  const faultOf = (text: string) => (isLacking && !isReason(text) ? triageWords().tooShort : undefined);
  return (
    <Question
      work={work}
      title={t.other}
      answers={
        <>
          {refusal === null && (
            <Button kind="primary" large onClick={() => void declare()}>
              {t.declare}
            </Button>
          )}
          <LinkButton href={triageAddress(id)}>{triageWords().toQuestion}</LinkButton>
        </>
      }
    >
      {refusal !== null && work.refusal === null && <Refusal problem={refusal} />}
      <Cautions texts={careFor(work.chain, { kind: 'otherChange', target })} />
      <p class="to-do">{inWords(message('changeInstructions', { change: 'otherChange' }))}</p>
      <TextField
        label={t.otherWhat}
        hint={t.otherWhatHint}
        value={draft.what}
        maxLength={longest.text}
        error={faultOf(draft.what)}
        onInput={({ currentTarget }) => write({ what: currentTarget.value })}
      />
      <SelectField
        label={t.otherWhere}
        value={draft.at}
        onChoose={(chosen) => write({ at: chosen })}
        options={placesIn(work.chain)}
      />
      <MayItStay value={draft.mayStay} onChoose={(mayStay) => write({ mayStay })} />
      <TextField
        label={t.expected}
        hint={t.expectedHint}
        value={expected}
        maxLength={longest.reason}
        error={faultOf(expected)}
        onInput={({ currentTarget }) => write({ expected: currentTarget.value })}
      />
    </Question>
  );
}

/** Whether a change that no list holds may stay once it cleared the fault. */
export function MayItStay({ value, onChoose }: { value: boolean; onChoose: (mayStay: boolean) => void }) {
  const t = stepWords();
  return (
    <Choices
      label={t.mayItStay}
      value={value ? 'stays' : 'goes'}
      onChoose={(choice) => onChoose(choice === 'stays')}
      options={[
        { value: 'goes', label: t.goesBack },
        { value: 'stays', label: t.mayStay },
      ]}
    />
  );
}

/** Every place of a chain to choose from: the whole of it, then devices, cables and sockets. */
export function placesIn(chain: Chain): { value: string; label: string }[] {
  const t = stepWords();
  const labelOf = (place: Place): string => {
    if (place.kind === 'chain') return t.wholeChain;
    const words = placeWords(chain, place);
    return place.kind === 'port' ? t.socket(words) : words;
  };
  return (['chain', 'device', 'link', 'port'] as const)
    .flatMap((kind) => everyPlace(chain, kind))
    .map((place) => ({ value: placeKey(place), label: labelOf(place) }));
}
