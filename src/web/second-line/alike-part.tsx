import { paths } from '../api/paths.ts';
import { LinkButton } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { useDocument } from '../store/documents.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { PastList } from './past-list.tsx';
import { pastWords } from './past-words.ts';

/** Closed cases that have something in common with this one: what it was there is worth a look here. */
export function AlikePart({ facts: { ticket } }: { facts: CaseFacts }) {
  const t = pastWords();
  const alike = useDocument(paths.pastCases({ like: ticket.id }));
  const count = alike.body?.items.length;
  return (
    <CasePart
      id="alike"
      title={t.alike}
      isFolded
      digest={count !== undefined && <Badge>{t.count(count)}</Badge>}
    >
      <DocumentView document={alike}>
        {({ items }) => (
          <>
            <p class="soft">{items.length === 0 ? t.noneAlike : t.alikeLead}</p>
            <PastList cases={items} />
          </>
        )}
      </DocumentView>
      <div>
        <LinkButton href={`/app/past-cases?symptom=${ticket.symptom}`}>{t.toSearch}</LinkButton>
      </div>
    </CasePart>
  );
}
