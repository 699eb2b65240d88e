import './second-line.css';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { InTurn } from '../parts/in-turn.tsx';
import { Badge } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { frameWords } from '../words/frame.ts';
import { stateWord, terms } from '../words/terms.ts';
import { dayAndTime } from '../words/times.ts';
import { Actions } from './actions.tsx';
import { AlikePart } from './alike-part.tsx';
import { Band } from './band.tsx';
import { type CaseFacts, useCaseFacts } from './case-facts.ts';
import { unfold, unfoldAll } from './case-part.tsx';
import { ChainPart } from './chain-part.tsx';
import { ChangesPart } from './changes-part.tsx';
import { AuditPart, FirmwarePart } from './checks-part.tsx';
import { EvidencePart } from './evidence-part.tsx';
import { HistoryPart, RequestsPart } from './history-part.tsx';
import { LogsPart } from './logs-part.tsx';
import { PacketsPart } from './packets-part.tsx';
import { pastWords } from './past-words.ts';
import { SidePart } from './side-part.tsx';
import { BudgetPart, EdidPart } from './signal-part.tsx';
import { SummaryPart } from './summary-part.tsx';
import { SuspectsPart } from './suspects-part.tsx';
import { TimesPart } from './times-part.tsx';
import { caseWords } from './words.ts';

/** A case on one page, for an engineer who has never seen the site. */
export function CaseScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = caseWords();
  const ticket = useDocument(paths.ticket(ticketId));
  const facts = useCaseFacts(ticket.body);
  // drawn anew only when something of the case changed
  const drawn = useMemo(() => (facts === null ? null : <Case facts={facts} />), [facts]);
  const title = ticket.body === null ? t.case : t.caseOf(ticket.body.number, ticket.body.client);
  return (
    <Screen title={title}>
      <DocumentView document={ticket}>
        {() => drawn ?? <p role="status">{frameWords().loading} …</p>}
      </DocumentView>
    </Screen>
  );
}

function Case({ facts }: { facts: CaseFacts }) {
  const t = caseWords();
  const { ticket, zone } = facts;
  // Paper can't be unfolded: all of it is printed.
  useEffect(() => {
    let foldAgain = (): void => undefined;
    const before = (): void => {
      foldAgain = unfoldAll();
    };
    const after = (): void => foldAgain();
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
  const contents: [string, string][] = [
    ['question', t.question],
    ...(ticket.triage.requests.length > 0 ? [['requests', t.requests] as [string, string]] : []),
    ['chain', t.chain],
    ['side', t.sideProof],
    ['changes', t.changes],
    ['suspects', t.suspects],
    ['alike', pastWords().alike],
    ['times', t.timeLine],
    ['logs', t.whatLogsSay],
    ['evidence', t.evidence],
    ['budget', t.budget],
    ['edids', t.edids],
    ['firmware', t.firmwareLevels],
    ['audit', t.audit],
    ['packets', t.packets],
    ['history', t.history],
  ];
  return (
    <>
      <div class="row">
        <Badge>{stateWord(ticket.state)}</Badge>
        <Badge>{terms().symptom[ticket.symptom]}</Badge>
        <Badge>{terms().priority[ticket.priority]}</Badge>
        <span class="soft">
          {[
            ticket.chainName,
            t.openedAt(dayAndTime(ticket.openedAt, zone)),
            ticket.assigneeName === null ? null : t.technicianIs(ticket.assigneeName),
            t.timesIn(zone),
          ]
            .filter((part) => part !== null)
            .join(' · ')}
        </span>
        <span class="not-printed">
          <Button onClick={() => print()}>{frameWords().print}</Button>
        </span>
      </div>
      <Band facts={facts} />
      <div class="case-columns">
        <SummaryPart facts={facts} />
        <div class="case-side">
          <InTurn>
            <Actions facts={facts} />
            <Contents contents={contents} />
            <AlikePart facts={facts} />
          </InTurn>
        </div>
        <div class="case-parts">
          {parts.map((Each, at) => (
            // the list of parts is always the same
            <InTurn key={at}>
              <Each facts={facts} />
            </InTurn>
          ))}
        </div>
      </div>
    </>
  );
}

/** In the order in which they are read. */
const parts = [
  RequestsPart,
  ChainPart,
  SidePart,
  ChangesPart,
  SuspectsPart,
  TimesPart,
  LogsPart,
  EvidencePart,
  BudgetPart,
  EdidPart,
  FirmwarePart,
  AuditPart,
  PacketsPart,
  HistoryPart,
];

/** What there is on the page; shut on a narrow screen, where it would be a screen of its own. */
function Contents({ contents }: { contents: readonly [string, string][] }) {
  const t = caseWords();
  const [isOpen] = useState(() => matchMedia('(min-width: 75rem)').matches);
  return (
    <nav class="card case-contents not-printed" aria-label={t.contents}>
      <details open={isOpen}>
        <summary>{t.contents}</summary>
        <div>
          <Button onClick={() => unfoldAll()}>{t.unfoldAll}</Button>
        </div>
        <ol>
          {contents.map(([id, title]) => (
            <li key={id}>
              <a href={`#${id}`} onClick={() => unfold(id)}>
                {title}
              </a>
            </li>
          ))}
        </ol>
      </details>
    </nav>
  );
}
