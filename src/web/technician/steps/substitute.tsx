import type { PlanReply } from '../../../../shared/contract/plan.ts';
import { runningWatch } from '../../../../state-machines/triage/record.ts';
import { LinkButton } from '../../parts/button.tsx';
import { suspectWords } from '../common/place-words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { caseWords } from './case-words.ts';
import { LookQuestion, lookIn } from './look.tsx';
import { CulpritLink, NextTest } from './next-test.tsx';
import { OfferedQuestion } from './offers.tsx';
import { PlanSentence, Question, WorkingQuestion } from './question.tsx';
import { Sides } from './sides.tsx';
import { StartWatch } from './start-watch.tsx';
import { stepWords } from './step-words.ts';
import { Stop, Suspects } from './tests.tsx';
import { ledBy, type PlanHere } from './use-plan.ts';
import { WaysQuestion } from './ways.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** No change is in place: the next one, the proof of the last one, or the end of looking. */
export function ReadyQuestion({ work, planned }: { work: Work; planned: PlanHere }) {
  const { plan } = planned;
  if (planned.isMaking) return <WorkingQuestion key="working" work={work} />;
  const [offer] = plan?.offers ?? [];
  const look = lookIn(offer);
  if (offer !== undefined && look !== null)
    return <LookQuestion key={offer.key} work={work} offer={offer} what={look} />;
  if (plan !== null && plan.ways.length > 0 && !waitsFirst(plan))
    return <WaysQuestion key="ways" work={work} plan={plan} />;
  if (plan !== null && leadsElsewhere(plan)) return <OfferedQuestion key="offered" work={work} plan={plan} />;
  if (plan?.next != null) return <NextTest key={plan.next.id} work={work} planned={planned} />;
  const command = ledBy(plan);
  if (work.may('startWatch') && runningWatch(work.ticket.triage) === null && command !== 'nameCulprit')
    return <ConfirmQuestion key="confirm" work={work} planned={planned} />;
  return <NothingLeft key="nothing" work={work} planned={planned} />;
}

const waitsFirst = ({ offers: [first] }: PlanReply): boolean => first?.steps.at(-1)?.type === 'waitFor';

const elsewhere: ReadonlySet<string> = new Set(['escalate', 'declareChange', 'voidWatch', 'waitFor']);

/** What the plan leads with is no test, and has no question of its own. */
function leadsElsewhere({ offers: [first] }: PlanReply): boolean {
  const type = first?.steps.at(-1)?.type;
  return first?.test === null && type !== undefined && elsewhere.has(type);
}

/** What cleared the fault was put back: only when the fault returns is it shown. */
function ConfirmQuestion({ work, planned: { plan } }: { work: Work; planned: PlanHere }) {
  const t = caseWords();
  return (
    <Question
      work={work}
      title={t.confirmTitle}
      answers={
        <>
          <StartWatch work={work} watchMin={plan?.watchMin ?? null} />
          <CulpritLink work={work} />
        </>
      }
    >
      <p class="to-do">{t.confirmLead}</p>
      <PlanSentence plan={plan} />
      {plan !== null && <Suspects work={work} plan={plan} />}
    </Question>
  );
}

function NothingLeft({ work, planned: { plan } }: { work: Work; planned: PlanHere }) {
  const t = stepWords();
  const canName = work.may('nameCulprit');
  const [likeliest] = plan?.suspects ?? [];
  const shown = likeliest === undefined ? null : suspectWords(work.chain, likeliest);
  return (
    <Question
      work={work}
      title={canName ? caseWords().shownTitle(shown) : t.nothingTitle}
      answers={
        <>
          <CulpritLink work={work} isNext={ledBy(plan) === 'nameCulprit'} />
          <LinkButton href={triageAddress(work.ticket.id, 'escalate')} large>
            {triageWords().escalate}
          </LinkButton>
        </>
      }
    >
      {plan?.stop === null && <PlanSentence plan={plan} />}
      {plan !== null && <Stop work={work} plan={plan} />}
      {plan !== null && <Suspects work={work} plan={plan} />}
      <Sides work={work} />
    </Question>
  );
}
