import { type ComponentChildren, createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Message } from '../../../../shared/contract/message.ts';
import type { PlannedTestView, PlanReply } from '../../../../shared/contract/plan.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { kindOfType } from '../../../../shared/contract/problem-type.ts';
import { sessionState } from '../../api/session.ts';
import { LinkButton } from '../../parts/button.tsx';
import { Lapsed } from '../../parts/lapsed.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { frameWords } from '../../words/frame.ts';
import { percent } from '../../words/percent.ts';
import { inWords, Sentence, said } from '../../words/sentence.tsx';
import { lengthOfTime } from '../../words/times.ts';
import { suspectWords } from '../common/place-words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { lateWords } from './late-words.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** What stands above a ticket's question, whichever it is: second line's direction. */
export const ComesFirst = createContext<ComponentChildren>(null);

/** One question: what to do, what to know about it, and then the answers, where the thumb is. */
export function Question({
  work,
  title,
  answers,
  children,
  beside,
}: {
  work: Work;
  title: string;
  answers: ComponentChildren;
  children?: ComponentChildren;
  /** What may be looked at or done instead; after the answers, so that it is in nobody's way. */
  beside?: ComponentChildren;
}) {
  return (
    <Screen title={title}>
      {useContext(ComesFirst)}
      <div class="question">{children}</div>
      {work.refusal !== null && (
        <>
          <Refusal problem={work.refusal} />
          <WaysToCorrect work={work} problem={work.refusal} />
        </>
      )}
      {sessionState.value.kind === 'lapsed' && <Lapsed text={frameWords().lapsed} />}
      <div class="answers">{answers}</div>
      {beside !== undefined && <div class="question">{beside}</div>}
    </Screen>
  );
}

/** Where whoever sees that a time or an answer is wrong puts it right. */
function WaysToCorrect({ work: { ticket }, problem }: { work: Work; problem: Problem }) {
  const kind = kindOfType(problem.type);
  if (kind !== 'time-out-of-order' && kind !== 'side-contradiction') return null;
  const wasWatched = ticket.triage.watches.some(({ endedAt }) => endedAt !== null);
  return (
    <p>
      {wasWatched && (
        <LinkButton href={triageAddress(ticket.id, 'watches')}>{triageWords().watches}</LinkButton>
      )}
      {kind === 'time-out-of-order' && (
        <LinkButton href={triageAddress(ticket.id, 'late-change')}>{lateWords().title}</LinkButton>
      )}
    </p>
  );
}

/** While the next test is worked out: nothing to be pressed that is not there a moment later. */
export function WorkingQuestion({ work }: { work: Work }) {
  return (
    <Question work={work} title={triageWords().working} answers={null}>
      <div class="question-to-come" />
    </Question>
  );
}

/** What the plan says of this step, in its own sentence. */
export function PlanSentence({ plan }: { plan: PlanReply | null }) {
  return plan === null ? null : (
    <>
      <p>
        <Sentence>{plan.sentence}</Sentence>
      </p>
      {plan.twoFaults !== null && (
        <Notice>
          <Sentence>{plan.twoFaults.text}</Sentence>
        </Notice>
      )}
    </>
  );
}

export function Cautions({ texts }: { texts: readonly Message[] }) {
  const t = triageWords();
  if (texts.length === 0) return null;
  return (
    <Notice tone="caution">
      <strong>{t.caution}</strong>
      <ul>
        {texts.map((text) => (
          <li key={said(text).text}>{inWords(text)}</li>
        ))}
      </ul>
    </Notice>
  );
}

export function Minutes({ minutes }: { minutes: PlannedTestView['minutes'] }) {
  const t = triageWords();
  const total = Math.max(1, minutes.setup + minutes.watch + minutes.restore);
  return (
    <dl class="minutes">
      {(['setup', 'watch', 'restore'] as const).map((part) => (
        <div key={part} class="minutes-part" style={{ flexGrow: Math.max(0.6, (4 * minutes[part]) / total) }}>
          <dt>{t.minutes[part]}</dt>
          <dd>{lengthOfTime(minutes[part])}</dd>
        </div>
      ))}
    </dl>
  );
}

/** What either outcome would mean. */
export function Expectation({ test, plan, work }: { test: PlannedTestView; plan: PlanReply; work: Work }) {
  const t = triageWords();
  const suspectOf = ({ component, likeliest }: PlannedTestView['outcomes'][number]) =>
    plan.suspects.find((suspect) => suspect.component === component) ?? { place: null, name: likeliest };
  return (
    <section class="stack">
      <h2>{t.expect}</h2>
      <dl class="fork">
        {test.outcomes.map((outcome) => (
          <div class="fork-way" key={outcome.answer.code}>
            <dt>
              {inWords(outcome.answer)} <span class="soft">({t.chance(percent(outcome.chance))})</span>
            </dt>
            <dd>{t.likeliest(suspectWords(work.chain, suspectOf(outcome)), percent(outcome.probability))}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** A planned test in full: care first, then what to do, why this one, and what to expect. */
export function TestFacts({ test, plan, work }: { test: PlannedTestView; plan: PlanReply; work: Work }) {
  const t = triageWords();
  const needs = [...test.kit, ...test.needs];
  return (
    <>
      <Cautions texts={test.caution} />
      <p class="to-do">{inWords(test.instructions)}</p>
      {(needs.length > 0 || test.people > 1) && (
        <section>
          <h2>{t.needs}</h2>
          <ul>
            {needs.map((need) => (
              <li key={said(need).text}>
                <Sentence>{need}</Sentence>
              </li>
            ))}
            {test.people > 1 && <li>{t.twoPeople}</li>}
          </ul>
        </section>
      )}
      <Minutes minutes={test.minutes} />
      <section>
        <h2>{t.why}</h2>
        <p>
          <Sentence>{test.why}</Sentence>
        </p>
      </section>
      <Expectation test={test} plan={plan} work={work} />
      <p class="soft">{inWords(test.afterwards)}</p>
    </>
  );
}
