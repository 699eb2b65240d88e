import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { findDevice, findLink } from '../../../shared/chain/look-up.ts';
import type { Device, Place } from '../../../shared/contract/chain.ts';
import { attachedKinds } from '../../../shared/contract/evidence-names.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { LinkButton } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { useLedHere } from '../parts/led-here.ts';
import { Badge, Notice } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { PlaceFacts } from '../place/place-facts.tsx';
import { isAt, tones } from '../place/place-knowledge.tsx';
import { knownWords } from '../place/words.ts';
import { useTicket } from '../projection/use-ticket.ts';
import { useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { terms } from '../words/terms.ts';
import { AttachFile } from './attach-file.tsx';
import { describeAddress, visitAddress } from './common/addresses.ts';
import { placeWords } from './common/place-words.ts';
import { placeOf } from './common/triage-addresses.ts';
import { correctionKey, noCorrection } from './correction-draft.ts';
import { describeWords } from './describe-words.ts';
import { EvidenceStrip } from './evidence-strip.tsx';
import { FirmwareEntry } from './firmware-entry.tsx';
import { PlacePhotos } from './place-photos.tsx';
import { placeScreenWords } from './place-screen-words.ts';
import { isTiedTo } from './place-tie.ts';
import { SettingsEntry } from './settings-entry.tsx';
import { Edids, SignalFacts } from './signal-facts.tsx';
import { InPlace } from './steps/go-on.tsx';
import { Uploads } from './uploads.tsx';
import './technician.css';
import { inWords, inWordsOf } from '../words/sentence.tsx';

type Parts = { ticket: Ticket; onTicket: Ticket; chain: ChainDocument; place: Place };

/** Everything of one device or cable on a visit, and everything that can be collected there. */
export function PlaceScreen({ ticketId = '', place: key = '' }: { ticketId?: string; place?: string }) {
  const t = placeScreenWords();
  const { server, projection } = useTicket(ticketId, 'shown');
  const ticket = projection?.ticket ?? server.body;
  const chain = useDocument(ticket === null ? null : paths.chain(ticket.chainId));
  const place = placeOf(key);
  const isThere = chain.body !== null && place !== null && exists(chain.body, place);
  return (
    <Screen title={isThere ? placeWords(chain.body.chain, place) : t.title}>
      <div>
        <LinkButton href={visitAddress(ticketId)}>{t.toVisit}</LinkButton>
      </div>
      <DocumentView document={server}>
        {(body) => (
          <DocumentView document={chain}>
            {(document) =>
              place === null || !isThere ? (
                <Notice tone="caution">{t.noSuchPlace}</Notice>
              ) : (
                <>
                  <InPlace ticket={ticket ?? body} chain={document.chain} />
                  <PlaceParts ticket={ticket ?? body} onTicket={body} chain={document} place={place} />
                </>
              )
            }
          </DocumentView>
        )}
      </DocumentView>
    </Screen>
  );
}

const exists = ({ chain }: ChainDocument, place: Place): boolean =>
  place.kind === 'link' ? findLink(chain, place.linkId) !== undefined : deviceAt(chain, place) !== null;

const deviceAt = (chain: ChainDocument['chain'], place: Place): Device | null =>
  place.kind === 'device' || place.kind === 'port' ? (findDevice(chain, place.deviceId) ?? null) : null;

function PlaceParts({ ticket, onTicket, chain, place }: Parts) {
  const t = placeScreenWords();
  const device = deviceAt(chain.chain, place);
  const [correction] = useDraftForm(correctionKey(ticket.id, place), noCorrection);
  const audit = useDocument(paths.chainAudit(chain.id, ticket.triage.symptom.kind)).body;
  const findings = (audit?.findings ?? []).filter((finding) => isAt(finding, place));
  return (
    <>
      <section class="card">
        <PlaceFacts chain={chain.chain} place={place} />
        {correction.basedOn !== null && (
          <div>
            <Badge tone="caution">{describeWords().waits}</Badge>
          </div>
        )}
        <div>
          <LinkButton href={describeAddress(ticket.id, place)}>{t.correct}</LinkButton>
        </div>
      </section>
      <Unfolding id="photos" title={t.photos} isOpen>
        <PlacePhotos ticket={ticket} onTicket={onTicket} chain={chain} place={place} />
        <EvidenceStrip ticketId={ticket.id} place={place} />
      </Unfolding>
      <Uploads ticketId={ticket.id} isWanted={({ about }) => isTiedTo(about.tie, place)} />
      {device !== null && (
        <>
          <Unfolding id="firmware" title={terms().completenessItem.firmware} isOpen>
            <FirmwareEntry ticket={ticket} onTicket={onTicket} chain={chain} device={device} />
          </Unfolding>
          <Unfolding id="settings" title={terms().completenessItem.settings}>
            <SettingsEntry ticket={ticket} onTicket={onTicket} chain={chain} device={device} />
          </Unfolding>
          <Unfolding id="files" title={t.files}>
            <AttachFile
              ticket={ticket}
              onTicket={onTicket}
              chain={chain}
              device={device}
              kinds={attachedKinds}
            />
          </Unfolding>
        </>
      )}
      <Unfolding id="findings" title={t.findings(findings.length)} isOpen={findings.length > 0}>
        {findings.length === 0 && <p>{t.noFindings}</p>}
        <ul class="verdicts">
          {findings.map((finding) => (
            <li key={messageKey(finding.text)} class="stack">
              <span>
                <Badge tone={tones[finding.severity]}>{knownWords().severities[finding.severity]}</Badge>{' '}
                {inWords(finding.text)}
              </span>
              <span>{inWords(finding.whatToDo)}</span>
              {finding.cautions.length > 0 && <Notice tone="caution">{inWordsOf(finding.cautions)}</Notice>}
            </li>
          ))}
        </ul>
      </Unfolding>
      <Unfolding id="signal" title={t.signal}>
        <SignalFacts chain={chain} place={place} />
      </Unfolding>
      {device !== null && (
        <Unfolding id="edids" title={terms().completenessItem.edid}>
          <Edids chain={chain} deviceId={device.id} />
        </Unfolding>
      )}
    </>
  );
}

/** A part that can be folded away; an address that names it opens it and leads there. */
function Unfolding({
  id,
  title,
  isOpen = false,
  children,
}: {
  id: string;
  title: string;
  isOpen?: boolean;
  children: ComponentChildren;
}) {
  const isWanted = location.hash === `#${id}`;
  const part = useRef<HTMLDetailsElement>(null);
  useLedHere(part, isWanted);
  useEffect(() => {
    if (!isWanted) return undefined;
    // After the screen has put its heading in sight.
    const later = setTimeout(() => {
      part.current?.querySelector<HTMLElement>('input, select, button')?.focus({ preventScroll: true });
    });
    return () => clearTimeout(later);
  }, [isWanted]);
  return (
    <details class="card part" id={id} ref={part} open={isOpen || isWanted}>
      <summary>
        <h2>{title}</h2>
      </summary>
      {children}
    </details>
  );
}
