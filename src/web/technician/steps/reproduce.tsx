import { useState } from 'preact/hooks';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import { typedBefore } from '../../../../shared/contract/erased-text.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import { baselineWatches, occurrencesIn } from '../../../../state-machines/triage/record.ts';
import { Button } from '../../parts/button.tsx';
import { Field } from '../../parts/field.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { PlanSentence, Question } from './question.tsx';
import { NoFaultForm } from './remedy.tsx';
import type { PlanHere } from './use-plan.ts';
import { watchWords } from './watch-words.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** A watch over time, as long as the plan asks for where it asks for any. */
export const watchOverTime = (
  watchMin: number | null,
  menuDeviceId: string | null = null,
): TicketCommand => ({
  type: 'startWatch',
  mode: 'time',
  trigger: null,
  plannedMin: watchMin === null ? null : Math.min(10_080, Math.ceil(watchMin)),
  menuDeviceId,
});
/** A watch that counts tries; without words the switching that was used last. */
export const watchByTries = (trigger: string | null, menuDeviceId: string | null = null): TicketCommand => ({
  type: 'startWatch',
  mode: 'trigger',
  trigger,
  plannedMin: null,
  menuDeviceId,
});

/** Seeing the fault oneself, before anything is changed. */
export function ReproduceQuestion({ work, planned }: { work: Work; planned: PlanHere }) {
  const t = watchWords();
  const seen = occurrencesIn(baselineWatches(work.ticket.triage)).length;
  const [asks, setAsks] = useState<'question' | 'tries' | 'noFault'>('question');
  if (asks === 'tries') return <TriesQuestion key="tries" work={work} onBack={() => setAsks('question')} />;
  if (asks === 'noFault') return <NoFaultForm key="noFault" work={work} onBack={() => setAsks('question')} />;
  const wantsMore = planned.plan?.offers[0]?.steps[0]?.type === 'startWatch';
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
    <Button
      kind={goOn !== false && !wantsMore ? 'plain' : 'primary'}
      large
      onClick={() => void work.send(watchOverTime(planned.plan?.watchMin ?? null))}
    >
      {t.startTime}
    </Button>
  );
  return (
    <Question
      key="reproduce"
      work={work}
      title={t.reproduceTitle}
      answers={
        <>
          {wantsMore ? [start, goOn] : [goOn, start]}
          <Button onClick={() => setAsks('tries')}>{t.startTries}</Button>
          {work.may('chooseRemedy') && <Button onClick={() => setAsks('noFault')}>{t.noFault}</Button>}
        </>
      }
    >
      <p class="to-do">{t.reproduceDo}</p>
      <PlanSentence plan={planned.plan} />
    </Question>
  );
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
    if (trigger !== '') void work.send(watchByTries(trigger));
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
