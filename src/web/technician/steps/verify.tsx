import { useState } from 'preact/hooks';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import { occurrencesIn, verifyWatches } from '../../../../state-machines/triage/record.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Dialog } from '../../parts/dialog.tsx';
import { TextField } from '../../parts/field.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { typed } from '../../parts/typed.tsx';
import { LeftAs } from '../../place/chain-differences.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { FollowUp, followUpWords } from '../../waiting/follow-up.tsx';
import { reportAddress } from '../common/addresses.ts';
import { caseWords } from './case-words.ts';
import { LeavingQuestion } from './leaving.tsx';
import { PlanSentence, Question } from './question.tsx';
import { TakeBack, WithdrawRemedy } from './remedy.tsx';
import { StartWatch } from './start-watch.tsx';
import type { PlanHere } from './use-plan.ts';
import { waysWords } from './ways-words.ts';
import type { Work } from './work.ts';

/** The remedy is done: does it hold, and may the ticket be closed? */
export function VerifyQuestion({ work, planned: { plan } }: { work: Work; planned: PlanHere }) {
  const t = caseWords();
  const [isClosing, setClosing] = useState(false);
  const [isLeaving, setLeaving] = useState(false);
  if (isLeaving) return <LeavingQuestion key="leaving" work={work} onDone={() => setLeaving(false)} />;
  const checks = work.may('checkBeforeLeaving') && work.ticket.triage.leavingCheck === null;
  const cameBack = occurrencesIn(verifyWatches(work.ticket.triage)).length > 0;
  const isUnproven = work.ticket.triage.remedy?.kind === 'onSuspicion';
  const holds = work.refusalOf({ type: 'close', note: '', override: null }) === null;
  return (
    <Question
      key="verify"
      work={work}
      title={isUnproven ? t.unprovenTitle : t.verifyTitle}
      answers={
        <>
          {cameBack && (
            <TakeBack
              work={work}
              label={t.cameBack}
              title={t.cameBackTitle}
              suggestion={t.cameBackReason}
              send={(reason) => work.send({ type: 'faultCameBack', reason })}
            />
          )}
          {checks && (
            <Button large {...(holds ? { kind: 'primary' as const } : {})} onClick={() => setLeaving(true)}>
              {waysWords().check}
            </Button>
          )}
          {holds && (
            <Button kind={checks ? 'plain' : 'primary'} large onClick={() => setClosing(true)}>
              {t.close}
            </Button>
          )}
          <StartWatch work={work} watchMin={plan?.watchMin ?? null} isNext={!holds && !cameBack} />
          {!holds && <Button onClick={() => setClosing(true)}>{t.close}</Button>}
          <ToReport work={work} label={t.toReportToSign} />
          <WithdrawRemedy work={work} />
        </>
      }
    >
      {!isUnproven && <p class="to-do">{t.verifyLead}</p>}
      <PlanSentence plan={plan} />
      <LeftAs triage={work.ticket.triage} />
      {isClosing && <CloseDialog work={work} onDone={() => setClosing(false)} />}
    </Question>
  );
}

function CloseDialog({ work, onDone }: { work: Work; onDone: () => void }) {
  const t = caseWords();
  const [{ note, why }, write, forget] = useDraftForm(`close ${work.ticket.id}`, { note: '', why: '' });
  const refusal = work.refusalOf({ type: 'close', note: '', override: null });
  const close = async () => {
    if (refusal !== null && !isReason(why)) return;
    const override = refusal === null ? null : { reason: why.trim() };
    if (!(await work.send({ type: 'close', note: note.trim(), override }))) return;
    await forget();
    onDone();
  };
  return (
    <Dialog title={t.closeTitle} closeLabel={t.notYet} onClose={onDone}>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void close();
        }}
      >
        {refusal !== null && <Refusal problem={work.refusal ?? refusal} />}
        {refusal !== null && (
          <TextField
            label={t.closeAnywayWhy}
            value={why}
            maxLength={longest.reason}
            onInput={({ currentTarget }) => write({ why: currentTarget.value })}
          />
        )}
        <TextField
          label={t.closingNote}
          optional
          value={note}
          maxLength={longest.text}
          onInput={({ currentTarget }) => write({ note: currentTarget.value })}
        />
        <Button type="submit" kind="primary" large disabled={refusal !== null && !isReason(why)}>
          {refusal === null ? t.closeNow : t.closeAnyway}
        </Button>
      </form>
    </Dialog>
  );
}

/** The page for the client. It is signed before the ticket is closed: a closed one takes no evidence. */
const ToReport = ({ work, label }: { work: Work; label: string }) => (
  <LinkButton href={reportAddress(work.ticket.id)}>{label}</LinkButton>
);

/** The ticket is closed; for some days it can be opened again. */
export function ClosedQuestion({ work }: { work: Work }) {
  const t = caseWords();
  const { closing, remedy, evidence } = work.ticket.triage;
  const isSigned = evidence.some(({ tie, withdrawn }) => tie.shows === 'signature' && withdrawn === null);
  return (
    <Question
      key="closed"
      work={work}
      title={t.closedTitle}
      answers={
        <>
          <ToReport work={work} label={isSigned ? t.toReport : t.toReportToSign} />
          {work.may('reopen') && (
            <TakeBack
              work={work}
              label={t.reopen}
              title={t.reopen}
              suggestion={t.reopenReason}
              send={(reason) => work.send({ type: 'reopen', reason })}
            />
          )}
        </>
      }
    >
      {remedy !== null && !work.may('recordFollowUp') && <p>{typed(remedy.what)}</p>}
      {work.may('recordFollowUp') && (
        <section class="stack">
          <h2>{followUpWords().title}</h2>
          <FollowUp
            ticket={work.ticket}
            zone={work.zone}
            record={(heard) => void work.send({ type: 'recordFollowUp', heard, note: '', askAgainBy: null })}
          />
        </section>
      )}
      <LeftAs triage={work.ticket.triage} />
      {closing !== null && closing.note !== '' && <p>{typed(closing.note)}</p>}
    </Question>
  );
}
