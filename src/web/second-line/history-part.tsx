import { paths } from '../api/paths.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { typed } from '../parts/typed.tsx';
import { useDocument } from '../store/documents.ts';
import { inWords } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { dayAndTime } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { Table } from './table.tsx';
import { caseWords } from './words.ts';

/** What second line asked for, and what came back. */
export function RequestsPart({ facts: { ticket, zone, nameOf } }: { facts: CaseFacts }) {
  const t = caseWords();
  const { requests } = ticket.triage;
  if (requests.length === 0) return null;
  return (
    <CasePart id="requests" title={t.requests}>
      <ul class="case-requests">
        {requests.map(({ id, kind, item, text, at, by, answer }) => (
          <li key={id}>
            <strong>
              {kind === 'step' ? t.stepAsked : item === null ? t.ownQuestion : terms().completenessItem[item]}
              :
            </strong>{' '}
            {typed(text)} <span class="soft">{`${nameOf(by)}, ${dayAndTime(at, zone)}`}</span>
            <div>
              {answer === null ? (
                <Badge tone="caution">{t.notAnswered}</Badge>
              ) : (
                <>
                  → {typed(answer.text)}{' '}
                  <span class="soft">{`${nameOf(answer.by)}, ${dayAndTime(answer.at, zone)}`}</span>
                </>
              )}
            </div>
          </li>
        ))}
      </ul>
    </CasePart>
  );
}

/** Everything that happened, in sentences. */
export function HistoryPart({ facts: { ticket, zone } }: { facts: CaseFacts }) {
  const t = caseWords();
  const timeline = useDocument(paths.timeline(ticket.id));
  return (
    <CasePart
      id="history"
      title={t.history}
      isFolded
      digest={timeline.body !== null && <Badge>{t.entries(timeline.body.items.length)}</Badge>}
    >
      <DocumentView document={timeline}>
        {({ items }) => (
          <Table
            caption={t.history}
            heads={[t.when, t.who, t.what]}
            rows={items.map(({ at, actorName, text }) => [dayAndTime(at, zone), actorName, inWords(text)])}
          />
        )}
      </DocumentView>
    </CasePart>
  );
}
