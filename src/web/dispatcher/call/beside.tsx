import type { SiteSummary } from '../../../../shared/contract/site.ts';
import { paths } from '../../api/paths.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Card, Facts, List, ListLink } from '../../parts/card.tsx';
import { lazyPart } from '../../parts/lazy-part.tsx';
import { Badge, Notice } from '../../parts/notice.tsx';
import { useDocument } from '../../store/documents.ts';
import { stateWord, terms } from '../../words/terms.ts';
import { day } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { deskWords } from '../common/words.ts';
import { callWords } from './words.ts';

const DrawnChain = lazyPart(() => import('../../place/drawn-chain.tsx').then((module) => module.DrawnChain));

/** What is known of the place, beside the questions. */
export function Beside({ site, chainId }: { site: SiteSummary; chainId: string | null }) {
  const [t, d] = [callWords(), deskWords()];
  const zone = useZone(site.id);
  const chain = useDocument(chainId === null ? null : paths.chain(chainId)).body;
  const tickets = useDocument(paths.tickets({ siteId: site.id, limit: 6 })).body?.items ?? null;
  return (
    <div class="stack">
      <Card title={site.client}>
        <Facts
          facts={[
            [d.address, site.address],
            [d.contact, site.contact.name],
            [
              d.phone,
              site.contact.phone === null ? null : (
                <a class="tel" href={`tel:${site.contact.phone.replaceAll(/[^+\d]/g, '')}`}>
                  {site.contact.phone}
                </a>
              ),
            ],
            [d.hours, site.contact.hours],
            [d.access, site.accessNotes],
            [d.travel, site.travelNotes],
          ]}
        />
        {site.hazards.length > 0 && (
          <Notice tone="caution">
            <strong>{d.hazards}</strong>
            {site.hazards.map(({ kind, text }) => (
              <span key={kind + text}>
                {terms().hazard[kind]}: {text}
              </span>
            ))}
          </Notice>
        )}
        <div>
          <LinkButton href={`/app/sites/${site.id}`}>{d.toSite}</LinkButton>
        </div>
      </Card>
      {chain !== null && (
        <Card title={chain.chain.name}>
          <DrawnChain chain={chain} />
        </Card>
      )}
      <Card title={t.lastTickets}>
        {tickets !== null && tickets.length === 0 && <p>{t.noTickets}</p>}
        <List>
          {(tickets ?? []).map((ticket) => (
            <ListLink key={ticket.id} href={`/app/tickets/${ticket.id}`}>
              <strong>
                {d.ticket(ticket.number)}: {terms().symptom[ticket.symptom]}
              </strong>
              <span class="row">
                <Badge>{stateWord(ticket.state)}</Badge>
                <span class="soft">{day(ticket.openedAt, zone)}</span>
              </span>
            </ListLink>
          ))}
        </List>
      </Card>
    </div>
  );
}

/** Open tickets at the chain: the call may be about one of them. */
export function SameChain({
  chainId,
  seen,
  onAnother,
}: {
  chainId: string;
  seen: readonly string[];
  onAnother: (ids: string[]) => void;
}) {
  const [t, d] = [callWords(), deskWords()];
  const open = useDocument(paths.tickets({ chainId, state: 'open', limit: 50 })).body?.items ?? [];
  const zone = useZone(null);
  if (open.length === 0) return null;
  const isAllSeen = open.every(({ id }) => seen.includes(id));
  return (
    <Notice tone={isAllSeen ? 'plain' : 'caution'}>
      <h2>{t.sameChain}</h2>
      <p>{isAllSeen ? t.isAnother : t.sameChainHint}</p>
      <ul class="same-chain">
        {open.map((ticket) => (
          <li key={ticket.id} class="row">
            <strong>{d.ticket(ticket.number)}</strong>
            <span>{terms().symptom[ticket.symptom]}</span>
            <Badge>{stateWord(ticket.state)}</Badge>
            <span class="soft">
              {day(ticket.openedAt, zone)} · {ticket.assigneeName ?? d.nobody}
            </span>
            <LinkButton href={`/app/tickets/${ticket.id}`}>{t.thatOne}</LinkButton>
          </li>
        ))}
      </ul>
      {!isAllSeen && (
        <div>
          <Button onClick={() => onAnother(open.map(({ id }) => id))}>{t.another}</Button>
        </div>
      )}
    </Notice>
  );
}
