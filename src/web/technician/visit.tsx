import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { ChainDrawing } from '../drawing/chain-drawing.tsx';
import { useRecordMarks } from '../drawing/use-record-marks.ts';
import { LinkButton } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { InTurn } from '../parts/in-turn.tsx';
import { lazyPart } from '../parts/lazy-part.tsx';
import { Badge, Notice } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { typed } from '../parts/typed.tsx';
import { useTicket } from '../projection/use-ticket.ts';
import { GettingThere, Hazards } from '../site/getting-there.tsx';
import { isSettled, useDocument } from '../store/documents.ts';
import { frameWords } from '../words/frame.ts';
import { stateWord, terms } from '../words/terms.ts';
import { dayAndTime, lengthOfTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { diaryAddress, evidenceAddress, reportAddress } from './common/addresses.ts';
import { KeptHere } from './kept-here.tsx';
import { KitList } from './kit-list.tsx';
import { marksOf } from './marks-of.ts';
import { Notes } from './notes.tsx';
import { Part } from './part.tsx';
import { Peek } from './peek.tsx';
import { GoOn, InPlace } from './steps/go-on.tsx';
import { StillMissing } from './still-missing.tsx';
import { Told } from './told.tsx';
import { Uploads } from './uploads.tsx';
import { technicianWords } from './words.ts';
import './technician.css';

const ChainVersions = lazyPart(() =>
  import('../place/chain-versions.tsx').then((module) => module.ChainVersions),
);

/** One visit on one page, in the order in which it is needed: drive, take care, pack, know, look, collect. */
export function VisitScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = technicianWords();
  const { server, projection } = useTicket(ticketId, 'shown');
  const ticket = projection?.ticket ?? server.body;
  const siteDocument = useDocument(ticket === null ? null : paths.site(ticket.siteId));
  const chainDocument = useDocument(ticket === null ? null : paths.chain(ticket.chainId));
  const [site, chain] = [siteDocument.body, chainDocument.body];
  const zone = useZone(ticket?.siteId ?? null);
  return (
    <Screen title={ticket === null ? t.visits : ticket.client}>
      <DocumentView document={server}>
        {(body) => {
          const shown = ticket ?? body;
          // all of it at once: nothing moves under a thumb
          if (!isSettled(siteDocument) || !isSettled(chainDocument))
            return <p role="status">{frameWords().loading} …</p>;
          return (
            <>
              <InPlace ticket={shown} chain={chain?.chain ?? null} />
              <div class="row">
                <span>{t.ticket(body.number)}</span>
                <Badge>{stateWord(shown.state)}</Badge>
                <Badge>{terms().symptom[shown.symptom]}</Badge>
                {(body.priority === 'high' || body.priority === 'urgent') && (
                  <Badge tone="caution">{terms().priority[body.priority]}</Badge>
                )}
              </div>
              <KeptHere ticketId={ticketId} />
              {projection !== null && projection.ahead > 0 && <Notice>{t.waiting(projection.ahead)}</Notice>}
              <GoOn ticketId={ticketId} />
              {site !== null && <Hazards site={site} />}
              {site !== null && (
                <Part id="way" title={t.wayThere}>
                  <p>
                    <strong>{body.visitAt === null ? t.noVisit : dayAndTime(body.visitAt, zone)}</strong>
                    {body.visitMin != null && ` · ${lengthOfTime(body.visitMin)}`}
                  </p>
                  {body.intake.promised !== '' && (
                    <p>
                      {t.promised}: {typed(body.intake.promised)}
                    </p>
                  )}
                  <GettingThere site={site} />
                </Part>
              )}
              {chain !== null && (
                <InTurn>
                  <ChainPart ticket={shown} onTicket={body} chain={chain} />
                </InTurn>
              )}
              {chain !== null && (
                <InTurn>
                  <Part id="missing" title={t.missing}>
                    <StillMissing ticket={shown} onTicket={body} chain={asFoundOr(shown, chain.chain)} />
                  </Part>
                </InTurn>
              )}
              <Uploads ticketId={ticketId} />
              <InTurn>
                <Part id="evidence" title={t.evidence}>
                  <p>
                    {t.evidenceCount(
                      shown.triage.evidence.filter(({ withdrawn }) => withdrawn === null).length,
                    )}
                  </p>
                  <div>
                    <LinkButton href={evidenceAddress(ticketId)}>{t.toEvidence}</LinkButton>
                  </div>
                </Part>
              </InTurn>
              <InTurn>
                <Part id="diary" title={t.diary}>
                  <p>{t.reportCount(shown.triage.reports.length)}</p>
                  <div>
                    <LinkButton href={diaryAddress(ticketId)}>{t.toDiary}</LinkButton>
                  </div>
                </Part>
                <div>
                  <LinkButton href={reportAddress(ticketId)}>{t.toReport}</LinkButton>
                </div>
              </InTurn>
              <InTurn>
                <Part id="kit" title={t.kit}>
                  <KitList ticketId={ticketId} />
                </Part>
              </InTurn>
              <InTurn>
                <Part id="told" title={t.told}>
                  <Told ticket={body} chain={chain?.chain ?? null} />
                </Part>
                <Notes ticket={shown} onTicket={body} />
              </InTurn>
            </>
          );
        }}
      </DocumentView>
    </Screen>
  );
}

const asFoundOr = ({ triage }: Ticket, chain: Chain): Chain => triage.asFound?.chain ?? chain;

/** Loaded, and read, once it is opened. */
function Folded({ title, children }: { title: string; children: ComponentChildren }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="visit-folded" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen && children}
    </details>
  );
}

function ChainPart({ ticket, onTicket, chain }: { ticket: Ticket; onTicket: Ticket; chain: ChainDocument }) {
  const t = technicianWords();
  const [selected, setSelected] = useState<Place | null>(null);
  const recorded = useRecordMarks(ticket.triage, chain.chain);
  useEffect(() => {
    if (selected !== null) document.querySelector('.place-panel')?.scrollIntoView({ block: 'nearest' });
  }, [selected]);
  return (
    <Part id="chain" title={t.chain}>
      <p class="soft">{t.chainLead}</p>
      <ChainDrawing
        chain={chain.chain}
        marks={{ ...recorded, ...marksOf(ticket, chain.chain) }}
        selected={selected}
        onSelect={setSelected}
      />
      {selected !== null && (
        <Peek
          onTicket={onTicket}
          symptom={ticket.triage.symptom.kind}
          chain={chain}
          place={selected}
          onClose={() => setSelected(null)}
        />
      )}
      <Folded title={t.versions}>
        <ChainVersions chainId={chain.id} newest={chain.version} siteId={chain.siteId} />
      </Folded>
    </Part>
  );
}
