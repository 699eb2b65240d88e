import { useState } from 'preact/hooks';
import type { Occurrence } from '../../../../shared/contract/triage.ts';
import { occurrencesIn, standingSides, watchesFor } from '../../../../state-machines/triage/record.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { triageAddress } from '../common/triage-addresses.ts';
import { LookQuestion, lookIn } from './look.tsx';
import { menuAnswerWords } from './menu-answer-words.ts';
import { NextTest } from './next-test.tsx';
import { OfferedQuestion } from './offers.tsx';
import { PlanSentence, Question, TestFacts, WorkingQuestion } from './question.tsx';
import { deviceWords, Sides } from './sides.tsx';
import { stepWords } from './step-words.ts';
import { OtherTests, Suspects } from './tests.tsx';
import type { PlanHere } from './use-plan.ts';
import { OccurrenceList } from './watch.tsx';
import { WithdrawDialog } from './withdraw.tsx';
import { concludesByLooks, TraceQuestion, WithoutSide } from './without-side.tsx';
import { type Work, watchFromNow } from './work.ts';

/** On which side of which device the fault lies. */
export function SideQuestion({ work, planned }: { work: Work; planned: PlanHere }) {
  const { triage } = work.ticket;
  const concluded = new Set(standingSides(triage).map(({ deviceId }) => deviceId));
  const answered = watchesFor(triage, 'side').find(
    (watch) => occurrencesIn([watch]).length > 0 && !concluded.has(watch.menuDeviceId ?? ''),
  );
  const [offer] = planned.plan?.offers ?? [];
  const look = lookIn(offer);
  if (offer !== undefined && look !== null)
    return <LookQuestion key={offer.key} work={work} offer={offer} what={look} />;
  if (offer !== undefined && concludesByLooks(offer))
    return (
      <TraceQuestion
        key={offer.key}
        work={work}
        offer={offer}
        sentence={<PlanSentence plan={planned.plan} />}
      />
    );
  const { plan } = planned;
  const concludes = plan?.offers.some(({ steps }) => steps.some(({ type }) => type === 'concludeSide'));
  if (answered !== undefined && plan !== null && concludes === false) {
    const refusal = work.refusalOf({ type: 'concludeSide', deviceId: answered.menuDeviceId ?? '' });
    return <OfferedQuestion key="offered" work={work} plan={plan} refusal={refusal} />;
  }
  if (answered !== undefined) {
    const deviceId = answered.menuDeviceId ?? '';
    return <ConcludeQuestion key={`conclude ${deviceId}`} work={work} deviceId={deviceId} />;
  }
  if (planned.isMaking) return <WorkingQuestion key="working" work={work} />;
  const leads = plan?.offers[0];
  if (plan !== null && leads?.test === null && leads.steps[0]?.type === 'escalate')
    return <OfferedQuestion key="offered" work={work} plan={plan} />;
  const next = plan?.next ?? null;
  if (next?.kind === 'menu' && next.target.kind === 'device')
    return <MenuQuestion key={next.id} work={work} planned={planned} deviceId={next.target.deviceId} />;
  return next !== null && next.kind !== 'menu' && work.may('beginSubstitution') ? (
    <NextTest key={next.id} work={work} planned={planned} />
  ) : (
    <BeginQuestion key="begin" work={work} planned={planned} />
  );
}

function MenuQuestion({ work, planned, deviceId }: { work: Work; planned: PlanHere; deviceId: string }) {
  const t = stepWords();
  const { plan } = planned;
  if (plan?.next == null) return null;
  return (
    <Question
      work={work}
      title={t.menuTitle(deviceWords(work, deviceId))}
      answers={
        <>
          <Button
            kind="primary"
            large
            onClick={() => void work.send(watchFromNow(work, plan.next?.minutes.watch ?? null, deviceId))}
          >
            {t.menuUp}
          </Button>
          <BeginButton work={work} />
        </>
      }
      beside={
        <>
          <OtherTests work={work} plan={plan} />
          <Suspects work={work} plan={plan} />
          <Sides work={work} />
        </>
      }
    >
      <TestFacts test={plan.next} plan={plan} work={work} />
    </Question>
  );
}

function BeginButton({ work, isNext = false }: { work: Work; isNext?: boolean }) {
  const t = stepWords();
  if (!work.may('beginSubstitution')) return null;
  return (
    <Button
      kind={isNext ? 'primary' : 'plain'}
      large={isNext}
      onClick={() => void work.send({ type: 'beginSubstitution' })}
    >
      {t.begin}
    </Button>
  );
}

/** Where no menu comes next by the plan: go on, choose one by hand, or hand the case on. */
function BeginQuestion({ work, planned }: { work: Work; planned: PlanHere }) {
  const t = stepWords();
  const isKnown = work.may('beginSubstitution');
  return (
    <Question
      work={work}
      title={isKnown ? t.beginTitle : t.chooseMenu}
      answers={
        <>
          <BeginButton work={work} isNext />
          <WithoutSide work={work} />
          <LinkButton href={triageAddress(work.ticket.id, 'changes')} large>
            {t.chooseMenu}
          </LinkButton>
        </>
      }
      beside={<Sides work={work} />}
    >
      {isKnown && <p>{t.beginLead}</p>}
      <PlanSentence plan={planned.plan} />
    </Question>
  );
}

/** A menu was up when the fault came: what that says. */
function ConcludeQuestion({ work, deviceId }: { work: Work; deviceId: string }) {
  const t = stepWords();
  const [withdrawing, setWithdrawing] = useState<Occurrence | null>(null);
  const watches = watchesFor(work.ticket.triage, 'side').filter((watch) => watch.menuDeviceId === deviceId);
  const answers = occurrencesIn(watches).map((occurrence) => occurrence.menu);
  const stayed = answers.filter((answer) => answer === 'stayed').length;
  const vanished = answers.length - stayed;
  const says = stayed > 0 && vanished > 0 ? 'both' : stayed > 0 ? 'input' : 'output';
  const device = deviceWords(work, deviceId);
  const menu = menuAnswerWords(work.ticket.triage.symptom);
  const refusal = work.refusalOf({ type: 'concludeSide', deviceId });
  return (
    <Question
      work={work}
      title={menu.concludeTitle[says](device)}
      answers={
        <>
          {refusal === null && (
            <Button kind="primary" large onClick={() => void work.send({ type: 'concludeSide', deviceId })}>
              {t.conclude}
            </Button>
          )}
          <Button large onClick={() => void work.send(watchFromNow(work, null, deviceId))}>
            {t.watchOnce}
          </Button>
        </>
      }
    >
      <p class="to-do">{t.concludeWhy[says](device)}</p>
      <p>{menu.seen(stayed, vanished)}</p>
      {refusal !== null && work.refusal === null && <Refusal problem={refusal} />}
      {watches.map((watch) => (
        <OccurrenceList key={watch.id} work={work} watch={watch} onWithdraw={setWithdrawing} />
      ))}
      <Sides work={work} />
      {withdrawing !== null && (
        <WithdrawDialog work={work} occurrence={withdrawing} onDone={() => setWithdrawing(null)} />
      )}
    </Question>
  );
}
