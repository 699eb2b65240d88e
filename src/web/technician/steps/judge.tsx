import { useState } from 'preact/hooks';
import type { Verdict } from '../../../../shared/contract/change.ts';
import { verdicts } from '../../../../shared/contract/triage-names.ts';
import { message } from '../../../../shared/message/message.ts';
import { namedChange } from '../../../../shared/message/named-change.ts';
import { messageKey } from '../../../../shared/message/same.ts';
import { cameMoreRarely } from '../../../../state-machines/triage/record.ts';
import { judgementSoFar } from '../../../../state-machines/triage/rules/changes.ts';
import { Button } from '../../parts/button.tsx';
import { Choices } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { percent } from '../../words/percent.ts';
import { inWords, Sentence } from '../../words/sentence.tsx';
import { type AtChange, Described, Expected, PutBack } from './change-parts.tsx';
import { LeaveIn } from './left-in.tsx';
import { PlanSentence, Question } from './question.tsx';
import { ReasonDialog } from './reason.tsx';
import { StartWatch } from './start-watch.tsx';
import { stepWords } from './step-words.ts';
import { ledBy } from './use-plan.ts';
import type { Work } from './work.ts';

/** What the watches say by now, before it is put down. */
export function JudgeQuestion({ work, planned: { plan }, change }: AtChange) {
  const t = stepWords();
  const [isByHand, setByHand] = useState(false);
  const judged = judgementSoFar(work.ticket.triage, change);
  const mayBeRarer = judged.verdict === 'persists' && ledBy(plan) === 'startWatch';
  const isDecided = judged.verdict !== 'inconclusive' && !mayBeRarer;
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
      {mayBeRarer && <PlanSentence plan={plan} />}
      {judged.riskOfBeingFooled !== null && <p>{t.fooled(percent(judged.riskOfBeingFooled))}</p>}
      {[...judged.reasons, ...judged.warnings].map((text) => (
        <p key={messageKey(text)}>
          <Sentence>{text}</Sentence>
        </p>
      ))}
      <Described change={change} />
      <Expected change={change} />
      {isByHand && (
        <ByHand work={work} changeId={change.id} suggested={judged.verdict} onDone={() => setByHand(false)} />
      )}
    </Question>
  );
}

function ByHand({
  work,
  changeId,
  suggested,
  onDone,
}: {
  work: Work;
  changeId: string;
  suggested: Verdict;
  onDone: () => void;
}) {
  const t = stepWords();
  const [{ verdict }, write, forget] = useDraftForm(`verdict ${changeId}`, { verdict: suggested });
  return (
    <ReasonDialog
      about={`verdict ${changeId}`}
      title={t.byHandTitle}
      lead={t.byHandLead}
      action={t.byHand}
      refusal={work.refusal}
      onDone={onDone}
      onReason={async (reason) => {
        const isSent = await work.send({ type: 'judgeRetest', override: { verdict, reason } });
        if (isSent) await forget();
        return isSent;
      }}
    >
      <Choices
        label={t.verdict}
        value={verdict}
        onChoose={(chosen) => write({ verdict: chosen })}
        options={verdicts.map((value) => ({
          value,
          label: t.verdicts[value],
        }))}
      />
    </ReasonDialog>
  );
}

/** What the retest came to, and the end of the change. */
export function JudgedQuestion({ work, planned: { plan }, change }: AtChange) {
  const t = stepWords();
  const verdict = change.judgement?.verdict ?? 'inconclusive';
  const isRarer = cameMoreRarely(change);
  const isOpen = verdict === 'inconclusive';
  return (
    <Question
      work={work}
      title={isRarer ? t.rarerTitle : t.judgedTitle[verdict]}
      answers={
        <>
          {isOpen && work.may('startWatch') && <StartWatch work={work} watchMin={null} label={t.watchOn} />}
          <PutBack work={work} isNext={!isOpen} />
        </>
      }
    >
      {change.judgement?.attributable === false && <Notice tone="caution">{t.notAttributable}</Notice>}
      {isRarer ? (
        <PlanSentence plan={plan} />
      ) : (
        <p class="to-do">{inWords(message('changeAfterwards', { change: namedChange(change) }))}</p>
      )}
      {(change.judgement?.reasons ?? []).map((text) => (
        <p key={messageKey(text)}>
          <Sentence>{text}</Sentence>
        </p>
      ))}
    </Question>
  );
}
