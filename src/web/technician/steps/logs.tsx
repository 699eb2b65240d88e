import { useState } from 'preact/hooks';
import type { LogFinding } from '../../../../shared/contract/log-findings.ts';
import type { Occurrence } from '../../../../shared/contract/triage.ts';
import { type OpenProposal, openProposals } from '../../../../shared/logs/open-proposals.ts';
import { isLoggedOf } from '../../../../shared/logs/same-occurrence.ts';
import { paths } from '../../api/paths.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { useDocument } from '../../store/documents.ts';
import { Sentence } from '../../words/sentence.tsx';
import { dayAndTime } from '../../words/times.ts';
import { placeWords } from '../common/place-words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { menuAnswerWords } from './menu-answer-words.ts';
import { TicketPage } from './page.tsx';
import { watchWords } from './watch-words.ts';
import { WithdrawDialog } from './withdraw.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** What logs propose on a ticket as this device knows it, each once. */
export const proposalsIn = ({ ticket }: Work, logs: readonly LogFinding[]): OpenProposal[] =>
  ticket.state === 'closed' ? [] : openProposals(logs, ticket.triage.watches);

export function LogsScreen({ ticketId = '' }: { ticketId?: string }) {
  return <TicketPage ticketId={ticketId}>{(work) => <Logs work={work} />}</TicketPage>;
}

function Logs({ work }: { work: Work }) {
  const t = watchWords();
  const document = useDocument(paths.logFindings(work.ticket.id));
  const proposals = proposalsIn(work, document.body?.items ?? []);
  return (
    <Screen title={t.logsTitle}>
      <p>{proposals.length === 0 ? t.logsNone : t.logsLead}</p>
      {document.readAt !== null && <p class="soft">{t.logsOld(dayAndTime(document.readAt, work.zone))}</p>}
      {work.refusal !== null && <Refusal problem={work.refusal} />}
      {proposals.map((proposal) => (
        <ProposalCard key={proposal.evidenceId + proposal.seen.at} work={work} proposal={proposal} />
      ))}
      <Answered work={work} logs={document.body?.items ?? []} />
      <div>
        <LinkButton href={triageAddress(work.ticket.id)}>{triageWords().toQuestion}</LinkButton>
      </div>
    </Screen>
  );
}

function ProposalCard({ work, proposal }: { work: Work; proposal: OpenProposal }) {
  const t = watchWords();
  const { evidenceId, deviceId, watch, seen, alsoIn } = proposal;
  const confirm = (menu: Occurrence['menu']) =>
    void work.send({
      type: 'confirmOccurrence',
      watchId: watch.watchId,
      occurredAt: seen.at,
      durationS: seen.durationS,
      menu,
      // What the log says stands in its own words; ours are put together where they are shown.
      description: seen.excerpt,
      evidenceId,
    });
  const device = deviceId === null ? '' : placeWords(work.chain, { kind: 'device', deviceId });
  return (
    <section class="card">
      <h2>{t.logAt(dayAndTime(seen.at, work.zone), device)}</h2>
      <p>
        <Sentence>{seen.description}</Sentence>
      </p>
      <p class="soft">{t.purposeNames[watch.purpose]}</p>
      {alsoIn.length > 0 && (
        <p class="soft">
          {t.alsoInLogsOf(alsoIn.map((id) => placeWords(work.chain, { kind: 'device', deviceId: id })))}
        </p>
      )}
      {!work.may('confirmOccurrence') && <Notice>{t.cannotJudge}</Notice>}
      {work.may('confirmOccurrence') && watch.purpose === 'side' && (
        <>
          <Button large onClick={() => confirm('stayed')}>
            {menuAnswerWords(work.ticket.triage.symptom).confirmStayed}
          </Button>
          <Button large onClick={() => confirm('vanished')}>
            {menuAnswerWords(work.ticket.triage.symptom).confirmVanished}
          </Button>
        </>
      )}
      {work.may('confirmOccurrence') && watch.purpose !== 'side' && (
        <Button kind="primary" large onClick={() => confirm(null)}>
          {t.confirmIt}
        </Button>
      )}
      {work.may('answerLogged') && (
        <Button large onClick={() => void work.send(answerLogged(proposal, 'no'))}>
          {t.wasNot}
        </Button>
      )}
    </section>
  );
}

const answerLogged = ({ watch, seen, evidenceId }: OpenProposal, answer: 'no' | 'open') =>
  ({
    type: 'answerLogged',
    watchId: watch.watchId,
    occurredAt: seen.at,
    evidenceId,
    answer,
  }) as const;

/** What was answered here, and the way back from each answer. */
function Answered({ work, logs }: { work: Work; logs: readonly LogFinding[] }) {
  const t = watchWords();
  const { triage, state } = work.ticket;
  const [isWithdrawing, setWithdrawing] = useState<Occurrence | null>(null);
  if (state === 'closed') return null;
  // As if nobody had said anything yet: what then is proposed was answered.
  const silent = triage.watches.map((watch) => ({ ...watch, occurrences: [], loggedAsNone: [] }));
  const answered = openProposals(unsaid(logs), silent).flatMap((proposal) => {
    const watch = triage.watches.find(({ id }) => id === proposal.watch.watchId);
    const isIt = ({ at }: { at: string }) => isLoggedOf(at, proposal.seen.at);
    const none = watch?.loggedAsNone?.some(isIt) === true;
    const yes = watch?.occurrences.find((each) => each.withdrawn === null && isIt(each)) ?? null;
    return none || yes !== null ? [{ proposal, yes }] : [];
  });
  if (answered.length === 0) return null;
  return (
    <section class="stack">
      <h2>{t.answered}</h2>
      <ul class="list">
        {answered.map(({ proposal, yes }) => (
          <li class="card" key={proposal.evidenceId + proposal.seen.at}>
            <span>
              <strong>{yes === null ? t.saidNo : t.saidYes}</strong> {dayAndTime(proposal.seen.at, work.zone)}
            </span>
            <div>
              <Button
                onClick={() =>
                  yes === null ? void work.send(answerLogged(proposal, 'open')) : setWithdrawing(yes)
                }
              >
                {t.undoAnswer}
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {isWithdrawing !== null && (
        <WithdrawDialog work={work} occurrence={isWithdrawing} onDone={() => setWithdrawing(null)} />
      )}
    </section>
  );
}

/** The findings without what the server took for recorded. */
const unsaid = (logs: readonly LogFinding[]): LogFinding[] =>
  logs.map((log) => ({
    ...log,
    watches: log.watches.map((watch) => ({
      ...watch,
      proposed: watch.proposed.map((seen) => ({ ...seen, recordedAs: null })),
    })),
  }));
