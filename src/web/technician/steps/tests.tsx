import { useLocation } from 'preact-iso';
import type { ChangeKind } from '../../../../shared/contract/change.ts';
import type { PlannedTestView, PlanReply } from '../../../../shared/contract/plan.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { percent } from '../../words/percent.ts';
import { langOf, Sentence, said } from '../../words/sentence.tsx';
import { lengthOfTime } from '../../words/times.ts';
import { placeWords, suspectWords } from '../common/place-words.ts';
import { declareAddress } from '../common/triage-addresses.ts';
import { declaredAsPlanned, expectationOf } from './declaration.ts';
import { changeHere, useHere } from './here.ts';
import { stepWords } from './step-words.ts';
import { triageWords } from './words.ts';
import { type Work, watchFromNow } from './work.ts';

/** A test as an order. */
export const testTitle = ({ chain }: Work, test: PlannedTestView): string =>
  test.kind === 'menu' ? stepWords().menuTitle(placeWords(chain, test.target)) : said(test.text).text;

/** The plan's second and third best, and what would be better with more at hand. */
export function OtherTests({ work, plan }: { work: Work; plan: PlanReply }) {
  const t = stepWords();
  const { next, others, outOfReach } = plan;
  return (
    <>
      {others.map((test, at) => (
        <section key={test.id} class="card other-test">
          <h2>{t.orRather[at] ?? t.orRather[1]}</h2>
          <p>{testTitle(work, test)}</p>
          <p class="soft">
            {lengthOfTime(test.minutes.setup + test.minutes.watch + test.minutes.restore)}
            {next !== null && test.expectedMin - next.expectedMin >= 1 && (
              <> · {t.moreThanBest(lengthOfTime(test.expectedMin - next.expectedMin))}</>
            )}
          </p>
          <DoTest work={work} plan={plan} test={test} />
        </section>
      ))}
      {outOfReach !== null && <Better outOfReach={outOfReach} />}
      {next !== null && <Unwanted work={work} test={next} />}
    </>
  );
}

function Better({ outOfReach }: { outOfReach: NonNullable<PlanReply['outOfReach']> }) {
  const [text, why] = [said(outOfReach.text), said(outOfReach.why)];
  const saves = lengthOfTime(outOfReach.savesMin);
  return (
    <p class="soft">
      <span {...langOf(text, why)}>{triageWords().betterElsewhere(text.text, why.text, saves)}</span>
    </p>
  );
}

/** The way into a test from where the ticket is. */
export function DoTest({
  work,
  plan,
  test,
  isNext = false,
}: {
  work: Work;
  plan: PlanReply;
  test: PlannedTestView;
  isNext?: boolean;
}) {
  const t = stepWords();
  const look = isNext ? { kind: 'primary' as const, large: true } : {};
  const { target } = test;
  if (test.kind === 'menu') {
    const deviceId = target.kind === 'device' ? target.deviceId : '';
    return work.ticket.state === 'locateSide' ? (
      <Button {...look} onClick={() => void work.send(watchFromNow(work, test.minutes.watch, deviceId))}>
        {t.menuUp}
      </Button>
    ) : (
      <Button {...look} onClick={() => void work.send({ type: 'locateSideAgain', reason: t.backReason })}>
        {t.backToMenus}
      </Button>
    );
  }
  if (work.ticket.state === 'locateSide' && !work.may('beginSubstitution')) return null;
  return <DoChange work={work} plan={plan} test={test} isNext={isNext} />;
}

/** One tap where nothing is left to be said of the change; its form, for whoever expects something else of it. */
function DoChange({
  work,
  plan,
  test,
  isNext,
}: {
  work: Work;
  plan: PlanReply;
  test: PlannedTestView;
  isNext: boolean;
}) {
  const t = stepWords();
  const { route } = useLocation();
  const look = isNext ? { kind: 'primary' as const, large: true } : {};
  const commands = declaredAsPlanned(work, plan, test);
  const address = declareAddress(work.ticket.id, test);
  const toForm = async () => {
    const isReady = work.ticket.state !== 'locateSide' || (await work.send({ type: 'beginSubstitution' }));
    if (isReady) route(address);
  };
  if (commands === null)
    return (
      <Button {...look} onClick={() => void toForm()}>
        {t.declareThis}
      </Button>
    );
  return (
    <>
      <Button {...look} onClick={() => void work.sendInOrder(commands)}>
        {t.declareThis}
      </Button>
      {isNext && <p class="soft">{t.expects(expectationOf(work, plan, test))}</p>}
      {isNext && <Button onClick={() => void toForm()}>{t.declareOtherwise}</Button>}
    </>
  );
}

/** Has the plan do without a test that the client won't have. */
function Unwanted({ work, test }: { work: Work; test: PlannedTestView }) {
  const here = useHere(work.ticket.id);
  const refuse = () =>
    void changeHere(work.ticket.id, {
      refused: [
        ...here.refused,
        {
          test: test.kind as ChangeKind | 'menu',
          place: test.target,
          ...(test.ownKindId == null ? {} : { ownKindId: test.ownKindId }),
        },
      ],
    });
  return (
    <div>
      <Button kind="quiet" onClick={refuse}>
        {stepWords().unwanted}
      </Button>
    </div>
  );
}

/** Who is suspected how much, and what speaks for and against it. */
export function Suspects({ work, plan }: { work: Work; plan: PlanReply }) {
  const t = triageWords();
  const likely = plan.suspects.filter(({ probability }) => probability >= 0.01).slice(0, 5);
  if (likely.length === 0) return null;
  return (
    <details>
      <summary>
        <h2>{t.suspects}</h2>
      </summary>
      <ol class="list">
        {likely.map((suspect) => (
          <li key={suspect.component} class="suspect">
            <strong>{suspectWords(work.chain, suspect)}</strong>
            <span class="figures">{percent(suspect.probability)}</span>
            <meter value={suspect.probability} max={1} aria-hidden="true" />
            <ul>
              {suspect.because.slice(0, 3).map(({ text, decibans }) => (
                <li key={said(text).text} class="soft">
                  <Sentence>{text}</Sentence> ({decibans > 0 ? '+' : '−'}
                  {Math.abs(decibans).toFixed(0)})
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </details>
  );
}

/** Nothing left is worth its time: what may be tried blindly all the same. */
export function Stop({ work, plan }: { work: Work; plan: PlanReply }) {
  const t = stepWords();
  if (plan.stop === null) return null;
  return (
    <>
      <Notice>
        <Sentence>{plan.stop.text}</Sentence>
      </Notice>
      {plan.stop.repairs.length > 0 && (
        <section>
          <h2>{t.repairs}</h2>
          <ul class="list">
            {plan.stop.repairs.slice(0, 5).map((repair) => (
              <li key={repair.kind + placeWords(work.chain, repair.target)}>
                <Sentence>{repair.text}</Sentence>{' '}
                <span class="soft">
                  ({percent(repair.probability)}, {lengthOfTime(repair.minutes)})
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
