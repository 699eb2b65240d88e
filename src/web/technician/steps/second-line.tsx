import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { SupportRequest } from '../../../../shared/contract/triage.ts';
import { currentEscalation, standingEvidence } from '../../../../state-machines/triage/record.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { TextField } from '../../parts/field.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { changeWords } from '../../words/change-words.ts';
import { terms } from '../../words/terms.ts';
import { clockTime } from '../../words/times.ts';
import { placeWords } from '../common/place-words.ts';
import { declareAddress } from '../common/triage-addresses.ts';
import { caseWords } from './case-words.ts';
import { MissingItems, type WaivedDraft, waiversOf } from './escalate.tsx';
import { Question } from './question.tsx';
import { TakeBack } from './remedy.tsx';
import type { Work } from './work.ts';

const openRequests = ({ ticket }: Work): SupportRequest[] =>
  ticket.triage.requests.filter(({ answer }) => answer === null);

/** Second line has the case: what they ask, the way to send it again, or to take it back. */
export function SecondLineQuestion({ work }: { work: Work }) {
  const asked = openRequests(work);
  if (asked.length > 0) return <AskedQuestion key="asked" work={work} asked={asked} />;
  return work.ticket.state === 'escalated.moreRequested' ? (
    <ResubmitQuestion key="resubmit" work={work} />
  ) : (
    <WaitingQuestion key="waiting" work={work} />
  );
}

function WaitingQuestion({ work }: { work: Work }) {
  const t = caseWords();
  const escalation = currentEscalation(work.ticket.triage);
  return (
    <Question
      work={work}
      title={t.waitingTitle}
      answers={
        work.may('recall') && (
          <TakeBack
            work={work}
            label={t.recall}
            title={t.recallTitle}
            suggestion={t.recallReason}
            send={(reason) => work.send({ type: 'recall', reason })}
          />
        )
      }
    >
      <p class="to-do">{t.waitingLead}</p>
      <p>{work.ticket.state === 'escalated.waiting' ? t.notTaken : t.taken}</p>
      {escalation !== null && (
        <p>
          <span class="soft">{t.yourQuestion}:</span> {typed(escalation.question)}
        </p>
      )}
    </Question>
  );
}

function AskedQuestion({ work, asked }: { work: Work; asked: readonly SupportRequest[] }) {
  const t = caseWords();
  return (
    <Question work={work} title={t.askedTitle(asked.length)} answers={null}>
      <Requests work={work} />
    </Question>
  );
}

/** What second line still waits for, each with its answer; also while a directed step is being done. */
export function Requests({ work }: { work: Work }) {
  return (
    <>
      {openRequests(work).map((request) => (
        <Request key={request.id} work={work} request={request} />
      ))}
    </>
  );
}

function Request({ work, request }: { work: Work; request: SupportRequest }) {
  const t = caseWords();
  const [draft, write, forget] = useDraftForm(`answer ${request.id}`, {
    text: '',
    left: [] as string[],
  });
  // Newer evidence is most likely for this; what is still on its way has no id at the server yet.
  const goes = standingEvidence(work.ticket.triage).filter(({ at }) => at >= request.at);
  const answer = async () => {
    const text = draft.text.trim();
    if (!isReason(text)) return;
    const evidenceIds = goes
      .map(({ id }) => id)
      .filter((id) => !draft.left.includes(id) && !work.isOnItsWay(id));
    if (await work.send({ type: 'answerRequest', requestId: request.id, text, evidenceIds })) await forget();
  };
  return (
    <section class="card request">
      <h2>
        {request.kind === 'step'
          ? t.stepAsked
          : (request.item && terms().completenessItem[request.item]) || t.theirQuestion}
      </h2>
      <p class="to-do">{typed(request.text)}</p>
      {request.change !== null && (
        <>
          <p>
            {changeWords(request.change)}: {placeWords(work.chain, request.change.target)}
          </p>
          {work.ticket.state === 'substitute.ready' && (
            <LinkButton href={declareAddress(work.ticket.id, request.change)}>{t.doStep}</LinkButton>
          )}
        </>
      )}
      <TextField
        label={t.answer}
        value={draft.text}
        maxLength={longest.reason}
        onInput={({ currentTarget }) => write({ text: currentTarget.value })}
      />
      {goes.length > 0 && (
        <fieldset class="choices field">
          <legend>{t.goesWith}</legend>
          {goes.map(({ id, kind, at }) => (
            <label class="choice" key={id}>
              <input
                type="checkbox"
                checked={!draft.left.includes(id)}
                onChange={({ currentTarget }) =>
                  write({
                    left: currentTarget.checked
                      ? draft.left.filter((each) => each !== id)
                      : [...draft.left, id],
                  })
                }
              />
              {kind}, {clockTime(at, work.zone)}
            </label>
          ))}
        </fieldset>
      )}
      <Button kind="primary" large disabled={!isReason(draft.text)} onClick={() => void answer()}>
        {t.answerIt}
      </Button>
    </section>
  );
}

function ResubmitQuestion({ work }: { work: Work }) {
  const t = caseWords();
  const [draft, write, forget] = useDraftForm(`resubmit ${work.ticket.id}`, { waived: {} as WaivedDraft });
  const earlier = new Set((currentEscalation(work.ticket.triage)?.waivers ?? []).map(({ item }) => item));
  const missing = work.ticket.missing.filter(({ item }) => !earlier.has(item));
  const send = async () => {
    if (await work.send({ type: 'resubmit', waivers: waiversOf(draft.waived) })) await forget();
  };
  return (
    <Question
      work={work}
      title={t.resubmitTitle}
      answers={
        <Button kind="primary" large onClick={() => void send()}>
          {t.resubmit}
        </Button>
      }
    >
      <MissingItems
        missing={missing}
        waived={draft.waived}
        onChange={(waived) => write({ waived })}
        ticketId={work.ticket.id}
      />
    </Question>
  );
}
