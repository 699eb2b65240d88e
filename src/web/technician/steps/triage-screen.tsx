import { openChange, runningWatch } from '../../../../state-machines/triage/record.ts';
import { paths } from '../../api/paths.ts';
import { Notice } from '../../parts/notice.tsx';
import { useDocument } from '../../store/documents.ts';
import { waitingWords } from '../../waiting/words.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { BaselineQuestion } from './baseline.tsx';
import { ChangeQuestion } from './change.tsx';
import { FinishQuestion } from './finish.tsx';
import { lateWords } from './late-words.ts';
import { proposalsIn } from './logs.tsx';
import { OtherWays } from './offers.tsx';
import { TicketPage } from './page.tsx';
import { ComesFirst } from './question.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import { RemedyQuestion } from './remedy.tsx';
import { ReproduceQuestion } from './reproduce.tsx';
import { Requests, SecondLineQuestion } from './second-line.tsx';
import { SideQuestion } from './side.tsx';
import { ReadyQuestion } from './substitute.tsx';
import { type PlanHere, usePlan } from './use-plan.ts';
import { ClosedQuestion, VerifyQuestion } from './verify.tsx';
import { WaitingQuestion } from './waiting.tsx';
import { WatchQuestion } from './watch.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** The technician's next question about a ticket, and nothing else; what it is follows from the ticket alone. */
export function TriageScreen({ ticketId = '' }: { ticketId?: string }) {
  return <TicketPage ticketId={ticketId}>{(work) => <Triage work={work} />}</TicketPage>;
}

function Triage({ work }: { work: Work }) {
  const t = triageWords();
  const planned = usePlan(work);
  const watch = runningWatch(work.ticket.triage);
  if (watch !== null) return <WatchQuestion key={watch.id} work={work} watch={watch} />;
  const isEscalated = work.ticket.state.startsWith('escalated');
  return (
    <>
      <ComesFirst.Provider value={isEscalated ? null : <Requests work={work} />}>
        <QuestionOf work={work} planned={planned} />
      </ComesFirst.Provider>
      <QuestionPhoto work={work} />
      {planned.plan !== null && <OtherWays work={work} plan={planned.plan} />}
      {planned.lacksSettings && <Notice>{t.noSettings}</Notice>}
      <More work={work} />
    </>
  );
}

function QuestionOf({ work, planned }: { work: Work; planned: PlanHere }) {
  const { state, triage } = work.ticket;
  const change = openChange(triage);
  const [stage] = state.split('.');
  switch (stage) {
    case 'baseline':
      return <BaselineQuestion work={work} planned={planned} />;
    case 'reproduce':
      return <ReproduceQuestion work={work} planned={planned} />;
    case 'locateSide':
      return <SideQuestion work={work} planned={planned} />;
    case 'substitute':
      return change === null ? (
        <ReadyQuestion work={work} planned={planned} />
      ) : (
        <ChangeQuestion key={change.id} work={work} planned={planned} change={change} />
      );
    case 'culpritFound':
      return <RemedyQuestion key="remedy" work={work} />;
    case 'remedy':
      return <FinishQuestion key="finish" work={work} />;
    case 'verify':
      return <VerifyQuestion work={work} planned={planned} />;
    case 'waiting':
      return <WaitingQuestion work={work} />;
    case 'escalated':
      return <SecondLineQuestion work={work} />;
    default:
      return <ClosedQuestion work={work} />;
  }
}

/** What can be done beside the question. */
function More({ work }: { work: Work }) {
  const t = triageWords();
  const { id, state } = work.ticket;
  const logs = useDocument(paths.logFindings(id)).body;
  const proposals = proposalsIn(work, logs?.items ?? []).length;
  const plans = state.startsWith('locateSide') || state.startsWith('substitute');
  return (
    <nav class="more" aria-label={t.more}>
      <ul>
        {proposals > 0 && <MoreLink href={triageAddress(id, 'logs')}>{t.logs(proposals)}</MoreLink>}
        {work.may('voidWatch') && <MoreLink href={triageAddress(id, 'watches')}>{t.watches}</MoreLink>}
        {work.may('recordLook') && <MoreLink href={triageAddress(id, 'looks')}>{t.looks}</MoreLink>}
        {plans && <MoreLink href={triageAddress(id, 'changes')}>{t.otherTests}</MoreLink>}
        <MoreLink href={triageAddress(id, 'kit')}>{t.kit}</MoreLink>
        {work.may('enterLateChange') && (
          <MoreLink href={triageAddress(id, 'late-change')}>{lateWords().title}</MoreLink>
        )}
        {work.may('waitFor') && state !== 'waiting' && (
          <MoreLink href={triageAddress(id, 'wait')}>{waitingWords().putOff}</MoreLink>
        )}
        {work.may('escalate') && <MoreLink href={triageAddress(id, 'escalate')}>{t.escalate}</MoreLink>}
        {work.ticket.missing.length > 0 && (
          <MoreLink href={`/app/visits/${id}#missing`}>{t.stillMissing(work.ticket.missing.length)}</MoreLink>
        )}
        <MoreLink href={`/app/visits/${id}`}>{t.toVisit}</MoreLink>
      </ul>
    </nav>
  );
}

function MoreLink({ href, children }: { href: string; children: string }) {
  return (
    <li>
      <a href={href}>{children}</a>
    </li>
  );
}
