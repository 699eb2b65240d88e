import './second-line.css';
import type { CaseFile } from '../../../shared/contract/packet.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { ChainPart } from './chain-part.tsx';
import { ChangesPart } from './changes-part.tsx';
import { EvidencePart } from './evidence-part.tsx';
import { RequestsPart } from './history-part.tsx';
import { LogsPart } from './logs-part.tsx';
import { PacketFiles } from './packet-files.tsx';
import { packetWords } from './packet-words.ts';
import { SidePart } from './side-part.tsx';
import { SummaryPart } from './summary-part.tsx';
import { TimesPart } from './times-part.tsx';
import { caseWords } from './words.ts';

/** A packet that another organisation shows, drawn from the packet alone: nothing else of theirs can be read. */
export function PacketScreen({ packetId = '' }: { packetId?: string }) {
  const t = packetWords();
  const packet = useDocument(paths.packet(packetId));
  const file = packet.body?.caseFile ?? null;
  const title =
    file === null ? t.packet : t.from(file.organisation.name, file.ticket.number, file.packet.version);
  return (
    <Screen title={title}>
      <DocumentView document={packet}>
        {({ caseFile, id }) => {
          const facts = factsOf(caseFile);
          return (
            <div class="case-parts">
              <CasePart id="packets" title={caseWords().packets}>
                <PacketFiles
                  packetId={id}
                  name={`case-${caseFile.ticket.number}-version-${caseFile.packet.version}`}
                />
              </CasePart>
              <SummaryPart facts={facts} />
              <RequestsPart facts={facts} />
              <ChainPart facts={facts} />
              <SidePart facts={facts} />
              <ChangesPart facts={facts} />
              <TimesPart facts={facts} />
              <LogsPart facts={facts} />
              <EvidencePart facts={facts} />
            </div>
          );
        }}
      </DocumentView>
    </Screen>
  );
}

function factsOf({
  ticket,
  site,
  chain,
  triage,
  intake,
  evidence,
  people,
  logs,
  missing,
}: CaseFile): CaseFacts {
  const { reporterRelation, ...told } = intake;
  const shown: Ticket = {
    ...ticket,
    siteId: site.id,
    chainId: chain.id,
    client: site.client,
    chainName: chain.now.chain.name,
    symptom: triage.symptom.kind,
    assigneeName: people.find(({ id }) => id === ticket.assigneeId)?.name ?? null,
    visitAt: null,
    visitMin: null,
    updatedAt: ticket.openedAt,
    closedAt: triage.closedAt,
    due: null,
    intake: { ...told, reporter: { name: '', phone: '', relation: reporterRelation } },
    sequence: 0,
    triage,
    allowedNow: [],
    missing,
  };
  return {
    ticket: shown,
    isOurs: false,
    chain: triage.asFound?.chain ?? chain.now.chain,
    // Their pictures are in the download; they can't be read one by one.
    evidence: evidence.map(({ path: _path, ...item }) => ({ ...item, hasThumbnail: false, fileName: null })),
    logs,
    zone: site.timeZone,
    nameOf: (memberId) => people.find(({ id }) => id === memberId)?.name ?? memberId ?? '',
  };
}
