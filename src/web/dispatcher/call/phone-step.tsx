import type { Chain } from '../../../../shared/contract/chain.ts';
import type { PlannedTestView } from '../../../../shared/contract/plan.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { lengthOfTime, number } from '../../words/times.ts';
import { afterWords } from './after-words.ts';
import { answerSaid, english, testSaid } from './plan-words.ts';
import { SaidText } from './said.tsx';

export const percent = (chance: number): string => `${number(chance * 100)} %`;

/** One thing to ask of the client: how, with what care, and what each answer would mean. */
export function PhoneStep({
  test,
  chain,
  isBusy,
  onTold,
}: {
  test: PlannedTestView;
  chain: Chain | null;
  isBusy: boolean;
  /** What to write on the ticket. */
  onTold: (line: string) => void;
}) {
  const t = afterWords();
  const { setup, watch, restore } = test.minutes;
  const said = testSaid(test, chain);
  return (
    <section class="card phone-step">
      <h3>
        <SaidText said={said} />
      </h3>
      <span class="soft">{t.minutes(lengthOfTime(setup + watch + restore))}</span>
      <p>
        <SaidText said={english(test.instructions)} />
      </p>
      {test.caution.length > 0 && (
        <Notice tone="caution">
          {test.caution.map((line) => (
            <SaidText key={line} said={english(line)} />
          ))}
        </Notice>
      )}
      <span>{t.itWas}</span>
      <ul class="outcomes">
        {test.outcomes.map((outcome) => (
          <li key={outcome.answer}>
            <Button
              disabled={isBusy}
              onClick={() => onTold(`${said.text}: ${answerSaid(outcome.answer).text}.`)}
            >
              <SaidText said={answerSaid(outcome.answer)} />
            </Button>
            <span>
              {t.ifSo(percent(outcome.chance))}; {t.points} <SaidText said={english(outcome.likeliest)} /> (
              {percent(outcome.probability)})
            </span>
          </li>
        ))}
      </ul>
      <p class="soft">
        {t.afterwards} <SaidText said={english(test.afterwards)} />
      </p>
      <div>
        <Button kind="quiet" disabled={isBusy} onClick={() => onTold(`${said.text}: ${t.notDone}.`)}>
          {t.notDone}
        </Button>
      </div>
    </section>
  );
}
