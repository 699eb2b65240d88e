import type { ComponentChildren } from 'preact';
import type { Place } from '../../../shared/contract/chain.ts';
import type { ChangeRecord } from '../../../shared/contract/change.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Remedy } from '../../../shared/contract/triage.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { Badge } from '../parts/notice.tsx';
import { typed } from '../parts/typed.tsx';
import { useDocument } from '../store/documents.ts';
import { useTickets } from '../store/use-tickets.ts';
import { changeWords } from '../words/change-words.ts';
import { endedWords } from '../words/ended-words.ts';
import { inWords } from '../words/sentence.tsx';
import { day } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { historyAt, type Past } from './history.ts';
import { historyWords } from './history-words.ts';

/** Assumed: so many tickets of a chain, newest first, say what there is to know of its parts. */
const mostTickets = 20;

type Properties = {
  chain: ChainDocument;
  place: Place;
  /** The ticket whose screen this is: what it did is no history yet. */
  exceptTicketId?: string | undefined;
};

/** What earlier tickets and versions of the chain say of a device or cable, newest first. */
export function PlaceHistory({ chain, place, exceptTicketId }: Properties) {
  const t = historyWords();
  const zone = useZone(chain.siteId);
  const list = useDocument(paths.tickets({ chainId: chain.id, limit: mostTickets + 1 }));
  const versions = useDocument(paths.chainVersions(chain.id));
  const lines = (list.body?.items ?? []).filter(({ id }) => id !== exceptTicketId);
  const wanted = lines.slice(0, mostTickets);
  const tickets = useTickets(wanted);
  const known = wanted.flatMap(({ id }) => tickets.get(id) ?? []);
  const past = historyAt(place, known, versions.body?.items ?? []);
  const isRead = list.body !== null && versions.body !== null && known.length === wanted.length;
  return (
    <section class="stack">
      <h4>{t.title}</h4>
      {past.length > 0 && (
        <ol class="plain-list place-history">
          {past.map((one) => (
            <li key={keyOf(one)}>
              <span class="soft">
                {day(one.at, zone)} · <Origin past={one} />
              </span>
              <Said past={one} />
            </li>
          ))}
        </ol>
      )}
      {!isRead && list.isLoading && <p role="status">{t.reading} …</p>}
      {isRead && past.length === 0 && <p>{t.none}</p>}
      {lines.length > mostTickets && <p class="soft">{t.newest(mostTickets)}</p>}
    </section>
  );
}

const keyOf = (past: Past): string =>
  past.kind === 'version'
    ? `version ${past.version}`
    : `${past.kind} ${past.ticket.id} ${past.kind === 'change' ? past.change.id : ''}`;

function Origin({ past }: { past: Past }) {
  const t = historyWords();
  if (past.kind === 'version') return <>{t.version(past.version, past.by)}</>;
  return <a href={`/app/tickets/${past.ticket.id}`}>{t.ticket(past.ticket.number)}</a>;
}

function Said({ past }: { past: Past }): ComponentChildren {
  const t = historyWords();
  switch (past.kind) {
    case 'culprit':
      return (
        <>
          <span>
            <Badge tone="refusal">{t.culprit}</Badge> {typed(past.culprit.explanation)}
          </span>
          {past.remedy !== null && <Done remedy={past.remedy} />}
        </>
      );
    case 'suspicion':
      return (
        <span>
          <Badge tone="caution">{t.suspicion}</Badge> {typed(past.remedy.what)}
        </span>
      );
    case 'change':
      return <Changed change={past.change} />;
    case 'version':
      return past.changes.map((change) => <span key={messageKey(change)}>{inWords(change)}</span>);
  }
}

const Done = ({ remedy }: { remedy: Remedy }) => (
  <span>
    {endedWords().kinds[remedy.kind]}: {typed(remedy.what)}
  </span>
);

/** What was done, what the retest said, and whether it stayed. */
function Changed({ change }: { change: ChangeRecord }) {
  const t = historyWords();
  const { judgement, status } = change;
  const ended = [
    judgement === null ? undefined : endedWords().verdicts[judgement.verdict],
    t.statuses[status],
  ];
  const said = ended.filter((one) => one !== undefined).join(', ');
  return (
    <span>
      {changeWords(change)}
      {said !== '' && <>: {said}</>}
    </span>
  );
}
