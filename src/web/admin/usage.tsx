import type { Usage } from '../../../shared/contract/usage.ts';
import { paths } from '../api/paths.ts';
import { Card } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { useDocument } from '../store/documents.ts';
import { number } from '../words/times.ts';
import { SectionScreen } from './section-screen.tsx';
import { adminWords } from './words.ts';

/** What the firm uses of the server, beside the most that it may. */
export function UsageScreen() {
  const t = adminWords();
  const usage = useDocument(paths.usage);
  return (
    <SectionScreen title={t.usage}>
      <p>{t.usageText}</p>
      <DocumentView document={usage}>
        {({ items }) => (
          <>
            {items.map((item) => (
              <Card key={item.quota} title={t.usageOf[item.quota]}>
                <p>{t.ofMost(amount(item, item.used), amount(item, item.most))}</p>
              </Card>
            ))}
          </>
        )}
      </DocumentView>
    </SectionScreen>
  );
}

const amount = ({ quota }: Usage, value: number): string =>
  quota === 'storedBytes' ? `${number(value / 1_000_000)} MB` : number(value);
