import { useState } from 'preact/hooks';
import type { ChangeRecord } from '../../../../shared/contract/change.ts';
import { message } from '../../../../shared/message/message.ts';
import { namedChange } from '../../../../shared/message/named-change.ts';
import { careFor } from '../../../../state-machines/triage/changes/described.ts';
import { wasRetested } from '../../../../state-machines/triage/rules/changes.ts';
import { runningUnattended } from '../../../../state-machines/triage/unattended.ts';
import { Button } from '../../parts/button.tsx';
import { typed } from '../../parts/typed.tsx';
import { changeWords } from '../../words/change-words.ts';
import { inWords } from '../../words/sentence.tsx';
import { placeWords } from '../common/place-words.ts';
import { type AtChange, Described, Expected, PutBack } from './change-parts.tsx';
import { JudgedQuestion, JudgeQuestion } from './judge.tsx';
import { LeaveIn, LeftInQuestion } from './left-in.tsx';
import { Cautions, PlanSentence, Question } from './question.tsx';
import { ReasonDialog } from './reason.tsx';
import { deviceToRead, SettingsQuestion } from './settings.tsx';
import { StartWatch } from './start-watch.tsx';
import { stepWords } from './step-words.ts';
import { ledBy } from './use-plan.ts';
import type { Work } from './work.ts';

/** The one open change, from its declaration to its end. */
export function ChangeQuestion({ work, planned, change }: AtChange) {
  const [skipped, setSkipped] = useState<readonly string[]>([]);
  const phase = change.status === 'declared' ? 'before' : 'after';
  const deviceId = change.status === 'judged' ? null : deviceToRead(work.ticket.triage, change, phase);
  const reading = `${phase} ${deviceId}`;
  if (deviceId !== null && !skipped.includes(reading)) {
    return (
      <SettingsQuestion
        key={reading}
        work={work}
        change={change}
        deviceId={deviceId}
        phase={phase}
        onSkip={() => setSkipped([...skipped, reading])}
      />
    );
  }
  if (change.status === 'declared')
    return <MakeQuestion key="make" work={work} planned={planned} change={change} />;
  const running = runningUnattended(work.ticket.triage);
  if (running !== null)
    return <LeftInQuestion key="left in" work={work} planned={planned} running={running} />;
  if (change.status === 'judged')
    return <JudgedQuestion key="judged" work={work} planned={planned} change={change} />;
  return !wasRetested(work.ticket.triage, change) ? (
    <RetestQuestion key="retest" work={work} planned={planned} change={change} />
  ) : (
    <JudgeQuestion key="judge" work={work} planned={planned} change={change} />
  );
}

const titleOf = ({ chain }: Work, change: ChangeRecord): string =>
  `${changeWords(change)}: ${placeWords(chain, change.target)}`;

function MakeQuestion({ work, planned: { plan }, change }: AtChange) {
  const t = stepWords();
  const [isWithdrawing, setWithdrawing] = useState(false);
  // Settings are read again before the retest begins.
  const watches =
    deviceToRead(work.ticket.triage, change, 'after') === null && ledBy(plan) !== 'leaveInPlace';
  return (
    <Question
      work={work}
      title={t.makeTitle(titleOf(work, change))}
      answers={
        <>
          {watches && (
            <StartWatch
              work={work}
              watchMin={plan?.watchMin ?? null}
              first={[{ type: 'applyChange' }]}
              label={t.madeAndWatch}
            />
          )}
          <Button
            kind={watches ? 'plain' : 'primary'}
            large
            onClick={() => void work.send({ type: 'applyChange' })}
          >
            {t.made}
          </Button>
          <Button onClick={() => setWithdrawing(true)}>{t.notMade}</Button>
        </>
      }
    >
      <Cautions texts={careFor(work.chain, change)} />
      {change.detail !== '' && <p class="to-do">{typed(change.detail)}</p>}
      <p class={change.detail === '' ? 'to-do' : ''}>
        {inWords(message('changeInstructions', { change: namedChange(change) }))}
      </p>
      <Expected change={change} />
      {isWithdrawing && (
        <ReasonDialog
          about={`withdraw ${change.id}`}
          title={t.notMadeTitle}
          suggestion={t.notMadeReason}
          action={t.notMade}
          refusal={work.refusal}
          onDone={() => setWithdrawing(false)}
          onReason={(reason) => work.send({ type: 'withdrawChange', reason })}
        />
      )}
    </Question>
  );
}

function RetestQuestion({ work, planned: { plan }, change }: AtChange) {
  const t = stepWords();
  const leads = ledBy(plan) === 'leaveInPlace';
  return (
    <Question
      work={work}
      title={t.retestTitle}
      answers={
        <>
          {leads && <LeaveIn work={work} isNext />}
          <StartWatch work={work} watchMin={plan?.watchMin ?? null} isNext={!leads} label={t.startRetest} />
          {!leads && <LeaveIn work={work} />}
          <PutBack work={work} />
        </>
      }
    >
      <p class="to-do">{t.retestLead}</p>
      <Described change={change} />
      <Expected change={change} />
      <PlanSentence plan={plan} />
    </Question>
  );
}
