import { Button, LinkButton } from '../../parts/button.tsx';
import { triageAddress } from '../common/triage-addresses.ts';
import { caseWords } from './case-words.ts';
import { Question, TestFacts } from './question.tsx';
import { Sides } from './sides.tsx';
import { stepWords } from './step-words.ts';
import { DoTest, OtherTests, Suspects, testTitle } from './tests.tsx';
import type { PlanHere } from './use-plan.ts';
import type { Work } from './work.ts';

/** The test that the plan has come next, with the one tap that begins it. */
export function NextTest({ work, planned: { plan } }: { work: Work; planned: PlanHere }) {
  if (plan?.next == null) return null;
  return (
    <Question
      work={work}
      title={testTitle(work, plan.next)}
      answers={
        <>
          <DoTest work={work} plan={plan} test={plan.next} isNext />
          {work.may('beginSubstitution') && (
            <Button onClick={() => void work.send({ type: 'beginSubstitution' })}>{stepWords().begin}</Button>
          )}
        </>
      }
      beside={
        <>
          <OtherTests work={work} plan={plan} />
          <CulpritLink work={work} />
          <Suspects work={work} plan={plan} />
          <Sides work={work} />
        </>
      }
    >
      <TestFacts test={plan.next} plan={plan} work={work} />
    </Question>
  );
}

export function CulpritLink({ work, isNext = false }: { work: Work; isNext?: boolean }) {
  if (!work.may('nameCulprit')) return null;
  return (
    <LinkButton
      href={triageAddress(work.ticket.id, 'culprit')}
      {...(isNext ? { kind: 'primary' as const, large: true } : {})}
    >
      {caseWords().nameIt}
    </LinkButton>
  );
}
