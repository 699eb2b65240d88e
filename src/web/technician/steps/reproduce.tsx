import { useState } from 'preact/hooks';
import { typedBefore } from '../../../../shared/contract/erased-text.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { Offer, PlanReply } from '../../../../shared/contract/plan.ts';
import { watchByTries } from '../../../../state-machines/triage/plan/steps.ts';
import { baselineWatches, occurrencesIn } from '../../../../state-machines/triage/record.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Field } from '../../parts/field.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { diaryAddress } from '../common/addresses.ts';
import { HowItCame } from './how-it-came.tsx';
import { OfferButton, OfferedQuestion } from './offers.tsx';
import { PlanSentence, Question } from './question.tsx';
import { NoFaultForm } from './remedy.tsx';
import { StartWatch } from './start-watch.tsx';
import { ledBy, type PlanHere } from './use-plan.ts';
import { watchWords } from './watch-words.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** Seeing the fault oneself, before anything is changed. */
export function ReproduceQuestion({ work, planned }: { work: Work; planned: PlanHere }) {
  const t = watchWords();
  const seen = occurrencesIn(baselineWatches(work.ticket.triage)).length;
  const { pattern } = work.ticket.triage.symptom;
  const comesByItself = pattern.kind !== 'trigger' && pattern.kind !== 'always';
  const [asks, setAsks] = useState<'question' | 'tries' | 'noFault'>('question');
  if (asks === 'tries') return <TriesQuestion key="tries" work={work} onBack={() => setAsks('question')} />;
  if (asks === 'noFault') return <NoFaultForm key="noFault" work={work} onBack={() => setAsks('question')} />;
  const { plan } = planned;
  if (asks === 'question' && plan !== null && ledBy(plan) === 'escalate')
    return <OfferedQuestion key="offered" work={work} plan={plan} />;
  const wantsMore = ledBy(planned.plan) === 'startWatch';
  const isOver = planned.plan?.offers.some(({ steps }) => steps.at(-1)?.type === 'chooseRemedy') === true;
  const waits = planned.plan?.offers.filter(({ steps }) => steps.at(-1)?.type === 'waitFor') ?? [];
  const isRare = planned.plan?.overDays != null;
  const tries = isRare ? null : triesFirst(plan);
  /** What is switched in them is yet to be said. */
  const isToSay = tries !== null && tries.toSay.length > 0;
  const { title, toDo } = headOf(isRare, tries !== null);
  const goOn = work.may('acceptReproduction') && (
    <Button
      kind={wantsMore ? 'plain' : 'primary'}
      large
      onClick={() => void work.send({ type: 'acceptReproduction' })}
    >
      {t.enough(t.seen(seen))}
    </Button>
  );
  const start = (
    <StartWatch
      key="start"
      work={work}
      watchMin={planned.plan?.watchMin ?? null}
      isNext={(goOn === false || wantsMore) && !isOver && !isToSay && waits.length === 0}
    />
  );
  return (
    <Question
      key="reproduce"
      work={work}
      title={title}
      answers={
        <>
          {waits.map((wait, at) => (
            <OfferButton key={wait.key} work={work} offer={wait} isNext={at === 0} />
          ))}
          {isRare && <LinkButton href={diaryAddress(work.ticket.id)}>{t.toDiary}</LinkButton>}
          {isToSay && (
            <Button kind="primary" large onClick={() => setAsks('tries')}>
              {t.startTrying}
            </Button>
          )}
          {wantsMore ? [start, goOn] : [goOn, start]}
          {!isToSay && comesByItself && <Button onClick={() => setAsks('tries')}>{t.startTries}</Button>}
          {work.may('chooseRemedy') && (
            <Button
              {...(isOver ? { kind: 'primary' as const, large: true } : {})}
              onClick={() => setAsks('noFault')}
            >
              {t.noFault}
            </Button>
          )}
        </>
      }
    >
      <p class="to-do">{toDo}</p>
      <PlanSentence plan={planned.plan} />
      {plan !== null && <HowItCame work={work} plan={plan} />}
    </Question>
  );
}

/** The offer to try what may make it come, where the plan puts that first. */
function triesFirst(plan: PlanReply | null): Offer | null {
  const first = plan?.offers[0] ?? null;
  const last = first?.steps.at(-1) as { type?: string; mode?: string } | undefined;
  return last?.type === 'startWatch' && last.mode === 'trigger' ? first : null;
}

function headOf(isRare: boolean, isTried: boolean): { title: string; toDo: string } {
  const t = watchWords();
  if (isRare) return { title: t.rareTitle, toDo: t.rareDo };
  return isTried ? { title: t.tryTitle, toDo: t.tryDo } : { title: t.reproduceTitle, toDo: t.reproduceDo };
}

function TriesQuestion({ work, onBack }: { work: Work; onBack: () => void }) {
  const t = watchWords();
  const [written, write] = useDraftForm(`trigger ${work.ticket.id}`, {
    trigger: typedBefore(
      work.ticket.triage.watches.findLast(({ trigger }) => trigger !== null)?.trigger ?? '',
    ),
  });
  const trigger = written.trigger.trim();
  const start = () => {
    if (trigger !== '') void work.send(watchByTries({ trigger, triggerKind: null }));
  };
  return (
    <Question
      work={work}
      title={t.triesTitle}
      answers={
        <>
          <Button kind="primary" large disabled={trigger === ''} onClick={start}>
            {t.startTrying}
          </Button>
          <Button onClick={onBack}>{triageWords().cancel}</Button>
        </>
      }
    >
      <p>{t.triesLead}</p>
      <Field
        label={t.trigger}
        hint={t.triggerHint}
        value={written.trigger}
        maxLength={longest.line}
        onInput={({ currentTarget }) => write({ trigger: currentTarget.value })}
      />
    </Question>
  );
}
