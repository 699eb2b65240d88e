import type { LogFinding } from '../../../../shared/contract/log-findings.ts';
import type { Occurrence } from '../../../../shared/contract/triage.ts';
import { type OpenProposal, openProposals } from '../../../../shared/logs/open-proposals.ts';
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
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** What logs propose on a ticket as this device knows it, each once. */
export const proposalsIn = ({ ticket }: Work, logs: readonly LogFinding[]): OpenProposal[] =>
  openProposals(logs, ticket.triage.watches);

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
    </section>
  );
}
