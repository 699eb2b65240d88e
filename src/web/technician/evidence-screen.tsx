import { useState } from 'preact/hooks';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { attachedKinds } from '../../../shared/contract/evidence-names.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { OpenEdidBench } from '../edids/lazy-bench.tsx';
import { LinkButton } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { typed } from '../parts/typed.tsx';
import { chainWords } from '../place/chain-words.ts';
import { useTicket } from '../projection/use-ticket.ts';
import { useDocument } from '../store/documents.ts';
import { outbox } from '../store/outbox.ts';
import type { ReadingEntry } from '../store/outbox-entry.ts';
import { terms } from '../words/terms.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { AttachFile } from './attach-file.tsx';
import { visitAddress } from './common/addresses.ts';
import { CaptureButton } from './common/capture.tsx';
import { placeWords } from './common/place-words.ts';
import { Thumbnail } from './evidence-strip.tsx';
import { evidenceWords } from './evidence-words.ts';
import { Part } from './part.tsx';
import { sizeWords } from './sizes.ts';
import { InPlace } from './steps/go-on.tsx';
import { Uploads } from './uploads.tsx';
import { WithdrawEvidence } from './withdraw-evidence.tsx';
import './technician.css';

/** All evidence of a ticket: what is on its way, what the server has, and the ways to add more. */
export function EvidenceScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = evidenceWords();
  const { server, projection } = useTicket(ticketId, 'shown');
  const ticket = projection?.ticket ?? server.body;
  const chain = useDocument(ticket === null ? null : paths.chain(ticket.chainId)).body;
  const evidence = useDocument(paths.evidence(ticketId));
  return (
    <Screen title={t.title}>
      <div>
        <LinkButton href={visitAddress(ticketId)}>{t.toVisit}</LinkButton>
      </div>
      <DocumentView document={server}>
        {(body) => (
          <>
            <InPlace ticket={ticket ?? body} chain={chain?.chain ?? null} />
            <div class="row">
              <CaptureButton ticket={body} tie={{}} kind="primary">
                {t.photo}
              </CaptureButton>
              <CaptureButton ticket={body} tie={{}} fromGallery>
                {t.fromGallery}
              </CaptureButton>
            </div>
            <Uploads ticketId={ticketId} />
            <WaitingReadings ticketId={ticketId} chain={chain} />
            {chain !== null && (
              <Part id="log" title={t.attach}>
                <AttachFile
                  ticket={ticket ?? body}
                  onTicket={body}
                  chain={chain}
                  device={null}
                  kinds={attachedKinds}
                />
              </Part>
            )}
            <Part id="edids" title={terms().completenessItem.edid}>
              <OpenEdidBench ticketId={ticketId} />
            </Part>
            <DocumentView document={evidence}>
              {({ items }) => <Items items={items} ticket={ticket ?? body} chain={chain} />}
            </DocumentView>
          </>
        )}
      </DocumentView>
    </Screen>
  );
}

function WaitingReadings({ ticketId, chain }: { ticketId: string; chain: ChainDocument | null }) {
  const t = evidenceWords();
  const entries = outbox.value.filter(
    (entry): entry is ReadingEntry => entry.kind === 'reading' && entry.ticketId === ticketId,
  );
  if (entries.length === 0) return null;
  return (
    <Part id="waiting" title={t.readingsWaiting(entries.length)}>
      <ul>
        {entries.map(({ order, reading }) => (
          <li key={order}>
            <ReadingWords reading={reading.reading} />
            {chain !== null && ` · ${whereOf(reading.tie as EvidenceItem['tie'], chain)}`}
          </li>
        ))}
      </ul>
    </Part>
  );
}

type Shown = { ticket: Ticket; chain: ChainDocument | null };

function Items({ items, ticket, chain }: Shown & { items: readonly EvidenceItem[] }) {
  const t = evidenceWords();
  return (
    <Part id="all" title={t.all(items.length)}>
      {items.length === 0 && <p>{t.none}</p>}
      <ul class="evidence-list">
        {items.map((item) => (
          <Item key={item.id} item={item} ticket={ticket} chain={chain} />
        ))}
      </ul>
    </Part>
  );
}

function Item({ item, ticket, chain }: Shown & { item: EvidenceItem }) {
  const t = evidenceWords();
  const zone = useZone(ticket.siteId);
  const [isWithdrawing, setWithdrawing] = useState(false);
  const where = chain === null ? '' : whereOf(item.tie, chain);
  return (
    <li class="evidence-item">
      {item.hasThumbnail ? (
        <Thumbnail item={item} />
      ) : (
        <span class="thumbnail-kind">{terms().evidenceKind[item.kind]}</span>
      )}
      <div class="evidence-item-words">
        <strong class={item.withdrawn === null ? '' : 'withdrawn'}>
          {item.tie.shows === null ? terms().evidenceKind[item.kind] : chainWords().shows[item.tie.shows]}
          {where !== '' && `, ${where}`}
        </strong>
        {item.reading !== null && <ReadingWords reading={item.reading} />}
        {item.description !== '' && <span>{typed(item.description)}</span>}
        <span class="soft">
          {[
            dayAndTime(item.at, zone),
            item.fileName,
            item.sizeBytes === null ? null : sizeWords(item.sizeBytes),
          ]
            .filter((part) => part !== null)
            .join(' · ')}
        </span>
        {item.withdrawn !== null ? (
          <span>
            <Badge tone="caution">{t.withdrawn}</Badge> {typed(item.withdrawn.reason)}
          </span>
        ) : isWithdrawing ? (
          <WithdrawEvidence ticketId={ticket.id} evidenceId={item.id} onDone={() => setWithdrawing(false)} />
        ) : (
          <div>
            <button type="button" class="button button-quiet" onClick={() => setWithdrawing(true)}>
              {t.withdraw}
              <span class="for-readers-only">
                : {terms().evidenceKind[item.kind]} {where} {dayAndTime(item.at, zone)}
              </span>
            </button>
          </div>
        )}
      </div>
    </li>
  );
}

/** Where evidence belongs, in few words. */
function whereOf(
  { deviceId, portId, linkId }: Partial<EvidenceItem['tie']>,
  { chain }: ChainDocument,
): string {
  if (linkId) return placeWords(chain, { kind: 'link', linkId });
  if (deviceId && portId) return placeWords(chain, { kind: 'port', deviceId, portId });
  return deviceId ? placeWords(chain, { kind: 'device', deviceId }) : '';
}

function ReadingWords({ reading }: { reading: NonNullable<EvidenceItem['reading']> }) {
  const t = evidenceWords();
  switch (reading.kind) {
    case 'firmware':
      return (
        <span>
          {terms().completenessItem.firmware}: {reading.level}
        </span>
      );
    case 'note':
      return <span>{typed(reading.text)}</span>;
    case 'settings':
      return (
        <span>
          {t.phases[reading.phase]}
          {Object.entries(reading.values)
            .map(([key, value]) => `${key}: ${String(value)}`)
            .join(' · ')}
        </span>
      );
  }
}
