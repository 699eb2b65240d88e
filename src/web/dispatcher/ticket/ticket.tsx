import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../../shared/contract/addresses.ts';
import type { Chain } from '../../../../shared/contract/chain.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { session } from '../../api/session.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Card } from '../../parts/card.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { ErasedSince } from '../../parts/erased-since.tsx';
import { lazyPart } from '../../parts/lazy-part.tsx';
import { Badge, Notice } from '../../parts/notice.tsx';
import { typed } from '../../parts/typed.tsx';
import { HowItEnded } from '../../report/how-it-ended.tsx';
import { GettingThere, Hazards } from '../../site/getting-there.tsx';
import { useDocument } from '../../store/documents.ts';
import { changeWords } from '../../words/change-words.ts';
import { Sentence } from '../../words/sentence.tsx';
import { commandWord, stateWord, terms } from '../../words/terms.ts';
import { dayAndTime } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { AssignForm } from '../assign/assign-form.tsx';
import { DeskScreen } from '../common/desk-screen.tsx';
import { deskWords } from '../common/words.ts';
import { EditIntake } from './edit-intake.tsx';
import { FollowUpCard } from './follow-up-card.tsx';
import { IntakeFacts } from './intake-facts.tsx';
import { Notes } from './notes.tsx';
import { Reopen } from './reopen.tsx';
import { saveFile } from './save-file.ts';
import { SiteHistory } from './site-history.tsx';
import { WaitingCard } from './waiting-card.tsx';
import { ticketWords } from './words.ts';

const DrawnTicket = lazyPart(() => import('./drawn-ticket.tsx').then((module) => module.DrawnTicket));

const Diary = lazyPart(() => import('../../diary/diary.tsx').then((module) => module.Diary));

/** A ticket as the dispatcher needs it: where it stands, who goes when, what was said, what happened. */
export function TicketScreen({ ticketId = '' }: { ticketId?: string }) {
  const [t, d] = [ticketWords(), deskWords()];
  const document = useDocument(paths.ticket(ticketId));
  const { body } = document;
  return (
    <DeskScreen
      title={body === null ? d.find : t.title(body.number, body.client)}
      tools={
        <>
          <LinkButton href={`/app/call/${ticketId}`}>{t.callAgain}</LinkButton>
          <LinkButton href={`/app/tickets/${ticketId}/report`}>{t.toReport}</LinkButton>
          {body !== null && <LinkButton href={`/app/sites/${body.siteId}`}>{d.toSite}</LinkButton>}
          {session.value?.member.role === 'admin' && (
            <LinkButton href={`/app/tickets/${ticketId}/texts`}>{t.eraseTexts}</LinkButton>
          )}
        </>
      }
    >
      <DocumentView document={document}>
        {(ticket) => <TicketView ticket={ticket} etag={document.etag} />}
      </DocumentView>
    </DeskScreen>
  );
}

function TicketView({ ticket, etag }: { ticket: Ticket; etag: string | null }) {
  const [t, d] = [ticketWords(), deskWords()];
  const zone = useZone(ticket.siteId);
  const chain = useDocument(paths.chain(ticket.chainId)).body?.chain ?? null;
  const site = useDocument(paths.site(ticket.siteId)).body;
  return (
    <>
      <div class="row">
        <Badge>{stateWord(ticket.state)}</Badge>
        <Badge>{terms().symptom[ticket.triage.symptom.kind]}</Badge>
        <Badge tone={ticket.priority === 'high' || ticket.priority === 'urgent' ? 'caution' : 'plain'}>
          {terms().priority[ticket.priority]}
        </Badge>
        <span>
          {d.technician}: <strong>{ticket.assigneeName ?? d.nobody}</strong>
        </span>
        <span>
          {d.visitAt}:{' '}
          <strong>{ticket.visitAt === null ? d.noVisit : dayAndTime(ticket.visitAt, zone)}</strong>
        </span>
      </div>
      <div class="beside">
        <div class="stack">
          <NowCard ticket={ticket} chain={chain} zone={zone} />
          <WaitingCard ticket={ticket} zone={zone} />
          <FollowUpCard ticket={ticket} zone={zone} />
          <Reopen ticket={ticket} />
          {chain !== null && <Drawing ticket={ticket} />}
          <Card title={t.asked}>
            <IntakeFacts ticket={ticket} chain={chain} />
            <details class="more not-printed">
              <summary>{t.tell}</summary>
              <EditIntake ticket={ticket} etag={etag} />
            </details>
          </Card>
          <Packets ticketId={ticket.id} number={ticket.number} zone={zone} />
          <Timeline ticketId={ticket.id} zone={zone} />
        </div>
        <div class="stack">
          {site !== null && (
            <Card title={t.place}>
              <GettingThere site={site} />
              <Hazards site={site} />
            </Card>
          )}
          {ticket.state !== 'closed' && (
            <div class="not-printed">
              <Card title={d.assign}>
                <AssignForm ticketId={ticket.id} withDays />
              </Card>
            </div>
          )}
          <SiteHistory ticket={ticket} zone={zone} />
          <Card title={t.diary}>
            <Diary ticket={ticket} zone={zone} />
          </Card>
          <Notes ticket={ticket} zone={zone} />
        </div>
      </div>
    </>
  );
}

/** Where it stands, its result first: on a closed ticket there is nothing else to say. */
function NowCard({ ticket, chain, zone }: { ticket: Ticket; chain: Chain | null; zone: string }) {
  const t = ticketWords();
  const plan = useDocument(ticket.state === 'closed' ? null : paths.plan(ticket.id)).body;
  const { changes, requests } = ticket.triage;
  const inPlace = changes.filter(
    ({ diagnostic, status }) => diagnostic && (status === 'applied' || status === 'judged'),
  );
  const asked = requests.filter(({ answer }) => answer === null);
  return (
    <Card title={ticket.state === 'closed' ? t.ended : t.now}>
      <HowItEnded triage={ticket.triage} chain={chain} zone={zone} />
      {plan !== null && (
        <p>
          <strong>{t.next}: </strong>
          <Sentence>{plan.sentence}</Sentence>
        </p>
      )}
      {plan?.twoFaults != null && (
        <p>
          <Sentence>{plan.twoFaults.text}</Sentence>
        </p>
      )}
      {inPlace.length > 0 && (
        <Notice tone="caution">
          <strong>{t.inPlace}</strong>
          {inPlace.map((change) => (
            <span key={change.id}>{change.detail === '' ? changeWords(change) : typed(change.detail)}</span>
          ))}
        </Notice>
      )}
      {asked.length > 0 && (
        <Notice tone="caution">
          <strong>{t.asks}</strong>
          {asked.map(({ id, text }) => (
            <span key={id}>{typed(text)}</span>
          ))}
        </Notice>
      )}
      {ticket.allowedNow.length > 0 && (
        <p class="soft">
          {t.allowed}: {ticket.allowedNow.map(commandWord).join(' · ')}
        </p>
      )}
    </Card>
  );
}

function Drawing({ ticket }: { ticket: Ticket }) {
  const chain = useDocument(paths.chain(ticket.chainId)).body;
  return chain === null ? null : (
    <Card title={chain.chain.name}>
      <DrawnTicket ticket={ticket} chain={chain} />
    </Card>
  );
}

function Packets({ ticketId, number, zone }: { ticketId: string; number: number; zone: string }) {
  const t = ticketWords();
  const packets = useDocument(paths.packets(ticketId)).body?.items ?? null;
  const [isMissing, setMissing] = useState(false);
  if (packets === null) return null;
  return (
    <Card title={t.packets}>
      {packets.length === 0 && <p>{t.noPackets}</p>}
      <ul class="plain-list">
        {packets.map(({ id, version, createdAt, createdByName, news, erasedSince }) => (
          <li key={id}>
            <div class="row">
              <strong>{t.packet(version)}</strong>
              <span class="soft">
                {dayAndTime(createdAt, zone)} · {createdByName}
              </span>
              <Button
                onClick={async () =>
                  setMissing(
                    !(await saveFile(
                      addressOf(addresses.packetDownload, { id }),
                      `case-${number}-v${version}.zip`,
                    )),
                  )
                }
              >
                {t.download(version)}
              </Button>
            </div>
            <ErasedSince packet={{ erasedSince }} />
            <ul lang="en">
              {news.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      {isMissing && (
        <Notice tone="caution" announce>
          {t.noDownload}
        </Notice>
      )}
    </Card>
  );
}

function Timeline({ ticketId, zone }: { ticketId: string; zone: string }) {
  const t = ticketWords();
  const timeline = useDocument(paths.timeline(ticketId)).body?.items ?? [];
  return (
    <Card title={t.timeline}>
      <ol class="timeline">
        {timeline.toReversed().map(({ at, actorName, text }) => (
          <li key={`${at} ${text.code}`}>
            <span class="soft">
              {dayAndTime(at, zone)} · {actorName}
            </span>
            <Sentence>{text}</Sentence>
          </li>
        ))}
      </ol>
    </Card>
  );
}
