import { findDevice } from '../../../../shared/chain/graph.ts';
import { checkAnswers } from '../../../../shared/contract/triage-names.ts';
import { picturesToCheck } from '../../../../state-machines/triage/rules/leaving.ts';
import { Button } from '../../parts/button.tsx';
import { Choices } from '../../parts/field.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { terms } from '../../words/terms.ts';
import { Question } from './question.tsx';
import { waysWords } from './ways-words.ts';
import type { Work } from './work.ts';

type Answer = (typeof checkAnswers)[number];
type Answers = Record<string, Answer>;

/** Before leaving, once: every source on every display, the sound, the usual start. */
export function LeavingQuestion({ work, onDone }: { work: Work; onDone: () => void }) {
  const t = waysWords();
  const pairs = picturesToCheck(work.chain);
  const { id, triage } = work.ticket;
  const [answers, write, forget] = useDraftForm<Answers>(`leaving ${id} ${triage.round}`, {});
  const answerOf = (key: string): Answer => answers[key] ?? 'notChecked';
  const nameOf = (id: string): string => findDevice(work.chain, id)?.name ?? id;
  const save = async () => {
    const pictures = pairs.map((pair) => ({ ...pair, answer: answerOf(keyOf(pair)) }));
    const [sound, usualStart] = [answerOf('sound'), answerOf('usualStart')];
    if (!(await work.send({ type: 'checkBeforeLeaving', pictures, sound, usualStart, note: '' }))) return;
    await forget();
    onDone();
  };
  const asked = [
    ...pairs.map((pair) => ({
      key: keyOf(pair),
      label: t.onDisplay(nameOf(pair.sourceId), nameOf(pair.displayId)),
    })),
    { key: 'sound', label: t.sound },
    { key: 'usualStart', label: t.usualStart },
  ];
  return (
    <Question
      work={work}
      title={t.checkTitle}
      answers={
        <>
          <Button kind="primary" large onClick={() => void save()}>
            {t.save}
          </Button>
          <Button onClick={onDone}>{t.back}</Button>
        </>
      }
    >
      <p class="to-do">{t.checkLead}</p>
      {asked.map(({ key, label }) => (
        <Choices
          key={key}
          label={label}
          value={answerOf(key)}
          options={checkAnswers.map((value) => ({ value, label: terms().checkAnswer[value] }))}
          onChoose={(answer) => write({ [key]: answer })}
        />
      ))}
    </Question>
  );
}

const keyOf = ({ sourceId, displayId }: { sourceId: string; displayId: string }): string =>
  `${sourceId} ${displayId}`;
