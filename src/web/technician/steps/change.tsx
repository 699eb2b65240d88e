import { useState } from 'preact/hooks';
import type { ChangeRecord, Verdict } from '../../../../shared/contract/change.ts';
import { verdicts } from '../../../../shared/contract/triage-names.ts';
import { message } from '../../../../shared/message/message.ts';
import { namedChange } from '../../../../shared/message/named-change.ts';
import { messageKey } from '../../../../shared/message/same.ts';
import { careFor } from '../../../../state-machines/triage/changes/applicable.ts';
import { retestWatches } from '../../../../state-machines/triage/record.ts';
import { usable } from '../../../../state-machines/triage/retest.ts';
import { judgementSoFar } from '../../../../state-machines/triage/rules/changes.ts';
import { runningUnattended } from '../../../../state-machines/triage/unattended.ts';
import { Button } from '../../parts/button.tsx';
import { Choices } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { typed } from '../../parts/typed.tsx';
import { changeWords } from '../../words/change-words.ts';
import { percent } from '../../words/percent.ts';
import { inWords, Sentence } from '../../words/sentence.tsx';
import { placeWords } from '../common/place-words.ts';
import { LeaveIn, LeftInQuestion } from './left-in.tsx';
import { Cautions, PlanSentence, Question } from './question.tsx';
import { ReasonDialog } from './reason.tsx';
import { deviceToRead, SettingsQuestion } from './settings.tsx';
import { StartWatch } from './start-watch.tsx';
import { stepWords } from './step-words.ts';
import type { PlanHere } from './use-plan.ts';
import type { Work } from './work.ts';

/** The one open change, from its declaration to its end. */
export function ChangeQuestion({
  work,
  planned,
  change,
}: {
  work: Work;
  planned: PlanHere;
  change: ChangeRecord;
}) {
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
  if (change.status === 'declared') return <MakeQuestion key="make" work={work} change={change} />;
  const running = runningUnattended(work.ticket.triage);
  if (running !== null)
    return <LeftInQuestion key="left in" work={work} planned={planned} running={running} />;
  if (change.status === 'judged') return <JudgedQuestion key="judged" work={work} change={change} />;
  return usable(retestWatches(work.ticket.triage, change.id)).length === 0 ? (
    <RetestQuestion key="retest" work={work} planned={planned} change={change} />
  ) : (
    <JudgeQuestion key="judge" work={work} planned={planned} change={change} />
  );
}

const titleOf = ({ chain }: Work, change: ChangeRecord): string =>
  `${changeWords(change)}: ${placeWords(chain, change.target)}`;

function MakeQuestion({ work, change }: { work: Work; change: ChangeRecord }) {
  const t = stepWords();
  const [isWithdrawing, setWithdrawing] = useState(false);
  return (
    <Question
      work={work}
      title={t.makeTitle(titleOf(work, change))}
      answers={
        <>
          <Button kind="primary" large onClick={() => void work.send({ type: 'applyChange' })}>
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
          title={t.notMadeTitle}
          suggestion={t.notMadeReason}
          action={t.notMade}
          refusal={work.refusal}
          onCancel={() => setWithdrawing(false)}
          onReason={async (reason) => {
            if (await work.send({ type: 'withdrawChange', reason })) setWithdrawing(false);
          }}
        />
      )}
    </Question>
  );
}

/** What whoever declared it added about how, or all there is of a change in words. */
function Described({ change: { detail } }: { change: ChangeRecord }) {
  return detail === '' ? null : (
    <p>
      <span class="soft">{stepWords().changed}:</span> {typed(detail)}
    </p>
  );
}

function Expected({ change }: { change: ChangeRecord }) {
  return (
    <p>
      <span class="soft">{stepWords().expectedWas}:</span> {typed(change.expected)}
      {change.settings.length > 0 && (
        <>
          {' '}
          {change.settings.map(({ key, to }) => (
            <span key={key} class="setting">
              {key} → {String(to)}
            </span>
          ))}
        </>
      )}
    </p>
  );
}

function RetestQuestion({
  work,
  planned: { plan },
  change,
}: {
  work: Work;
  planned: PlanHere;
  change: ChangeRecord;
}) {
  const t = stepWords();
  const leads = plan?.offers[0]?.steps[0]?.type === 'leaveInPlace';
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

function PutBack({ work, isNext = false }: { work: Work; isNext?: boolean }) {
  const t = stepWords();
  return (
    <>
      {work.may('keepChange') && (
        <Button
          kind={isNext ? 'primary' : 'plain'}
          large={isNext}
          onClick={() => void work.send({ type: 'keepChange', note: '' })}
        >
          {t.stays}
        </Button>
      )}
      {work.may('restoreChange') && (
        <Button
          kind={isNext && !work.may('keepChange') ? 'primary' : 'plain'}
          large={isNext}
          onClick={() => void work.send({ type: 'restoreChange', note: '' })}
        >
          {t.back}
        </Button>
      )}
    </>
  );
}

/** What the watches say by now, before it is put down. */
function JudgeQuestion({
  work,
  planned: { plan },
  change,
}: {
  work: Work;
  planned: PlanHere;
  change: ChangeRecord;
}) {
  const t = stepWords();
  const [isByHand, setByHand] = useState(false);
  const judged = judgementSoFar(work.ticket.triage, change);
  const isDecided = judged.verdict !== 'inconclusive';
  const judge = (
    <Button
      key="judge"
      kind={isDecided ? 'primary' : 'plain'}
      large={isDecided}
      onClick={() => void work.send({ type: 'judgeRetest', override: null })}
    >
      {t.judge[judged.verdict]}
    </Button>
  );
  const watchOn = (
    <StartWatch
      key="watch"
      work={work}
      watchMin={plan?.watchMin ?? null}
      isNext={!isDecided}
      label={t.watchOn}
    />
  );
  return (
    <Question
      work={work}
      title={t.judgeTitle[judged.verdict]}
      answers={
        <>
          {isDecided ? [judge, watchOn] : [watchOn, judge]}
          {!isDecided && <LeaveIn work={work} />}
          <Button onClick={() => setByHand(true)}>{t.byHand}</Button>
        </>
      }
    >
      {!judged.attributable && <Notice tone="caution">{t.notAttributable}</Notice>}
      {judged.riskOfBeingFooled !== null && <p>{t.fooled(percent(judged.riskOfBeingFooled))}</p>}
      {[...judged.reasons, ...judged.warnings].map((text) => (
        <p key={messageKey(text)}>
          <Sentence>{text}</Sentence>
        </p>
      ))}
      <Described change={change} />
      <Expected change={change} />
      {isByHand && <ByHand work={work} suggested={judged.verdict} onDone={() => setByHand(false)} />}
    </Question>
  );
}

function ByHand({ work, suggested, onDone }: { work: Work; suggested: Verdict; onDone: () => void }) {
  const t = stepWords();
  const [verdict, setVerdict] = useState<Verdict>(suggested);
  return (
    <ReasonDialog
      title={t.byHandTitle}
      lead={t.byHandLead}
      action={t.byHand}
      refusal={work.refusal}
      onCancel={onDone}
      onReason={async (reason) => {
        if (await work.send({ type: 'judgeRetest', override: { verdict, reason } })) onDone();
      }}
    >
      <Choices
        label={t.verdict}
        value={verdict}
        onChoose={setVerdict}
        options={verdicts.map((value) => ({
          value,
          label: t.verdicts[value],
        }))}
      />
    </ReasonDialog>
  );
}

function JudgedQuestion({ work, change }: { work: Work; change: ChangeRecord }) {
  const t = stepWords();
  const verdict = change.judgement?.verdict ?? 'inconclusive';
  const isOpen = verdict === 'inconclusive';
  return (
    <Question
      work={work}
      title={t.judgedTitle[verdict]}
      answers={
        <>
          {isOpen && work.may('startWatch') && <StartWatch work={work} watchMin={null} label={t.watchOn} />}
          <PutBack work={work} isNext={!isOpen} />
        </>
      }
    >
      {change.judgement?.attributable === false && <Notice tone="caution">{t.notAttributable}</Notice>}
      <p class="to-do">{inWords(message('changeAfterwards', { change: namedChange(change) }))}</p>
      {(change.judgement?.reasons ?? []).map((text) => (
        <p key={messageKey(text)}>
          <Sentence>{text}</Sentence>
        </p>
      ))}
    </Question>
  );
}
