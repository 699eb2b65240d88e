import type { Chain } from '../../../../shared/contract/chain.ts';
import type { PhonePlanReply, PlannedTestView } from '../../../../shared/contract/plan.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { afterwardsWords, cautionWords, instructionWords } from '../../words/change-words.ts';
import { lengthOfTime, number } from '../../words/times.ts';
import { afterWords } from './after-words.ts';
import { answerSaid, outcomeSaid, testSaid } from './plan-words.ts';
import { SaidText } from './said.tsx';

export const percent = (chance: number): string => `${number(chance * 100)} %`;

/** One thing to ask of the client: how, with what care, and what each answer would mean. */
export function PhoneStep({
  test,
  suspects,
  chain,
  isBusy,
  onTold,
}: {
  test: PlannedTestView;
  suspects: PhonePlanReply['suspects'];
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
      <p>{instructionWords(test.kind, test.instructions)}</p>
      {test.caution.length > 0 && (
        <Notice tone="caution">
          {test.caution.map((line) => (
            <span key={line}>{cautionWords(line)}</span>
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
              {t.ifSo(percent(outcome.chance))}; {t.points}{' '}
              <SaidText said={outcomeSaid(outcome.likeliest, suspects, chain)} /> (
              {percent(outcome.probability)})
            </span>
          </li>
        ))}
      </ul>
      <p class="soft">
        {t.afterwards} {afterwardsWords(test.kind, test.afterwards)}
      </p>
      <div>
        <Button kind="quiet" disabled={isBusy} onClick={() => onTold(`${said.text}: ${t.notDone}.`)}>
          {t.notDone}
        </Button>
      </div>
    </section>
  );
}
