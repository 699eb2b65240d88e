import type { PlannedTestView } from '../../../../shared/contract/plan.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { percent } from '../../words/percent.ts';
import { inWords, Sentence, said } from '../../words/sentence.tsx';
import { lengthOfTime } from '../../words/times.ts';
import { afterWords } from './after-words.ts';

/** One thing to ask of the client: how, with what care, and what each answer would mean. */
export function PhoneStep({
  test,
  isBusy,
  onTold,
}: {
  test: PlannedTestView;
  isBusy: boolean;
  /** What to write on the ticket. */
  onTold: (line: string) => void;
}) {
  const t = afterWords();
  const { setup, watch, restore } = test.minutes;
  return (
    <section class="card phone-step">
      <h3>
        <Sentence>{test.text}</Sentence>
      </h3>
      <span class="soft">{t.minutes(lengthOfTime(setup + watch + restore))}</span>
      <p>{inWords(test.instructions)}</p>
      {test.caution.length > 0 && (
        <Notice tone="caution">
          {test.caution.map((line) => (
            <span key={line.code}>{inWords(line)}</span>
          ))}
        </Notice>
      )}
      <span>{t.itWas}</span>
      <ul class="outcomes">
        {test.outcomes.map((outcome) => (
          <li key={outcome.answer.code}>
            <Button
              disabled={isBusy}
              onClick={() => onTold(`${said(test.text).text}: ${said(outcome.answer).text}.`)}
            >
              <Sentence>{outcome.answer}</Sentence>
            </Button>
            <span>
              {t.ifSo(percent(outcome.chance))}; {t.points} <Sentence>{outcome.likeliest}</Sentence> (
              {percent(outcome.probability)})
            </span>
          </li>
        ))}
      </ul>
      <p class="soft">
        {t.afterwards} {inWords(test.afterwards)}
      </p>
      <div>
        <Button
          kind="quiet"
          disabled={isBusy}
          onClick={() => onTold(`${said(test.text).text}: ${t.notDone}.`)}
        >
          {t.notDone}
        </Button>
      </div>
    </section>
  );
}
