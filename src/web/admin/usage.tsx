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
          <Card>
            <table class="usage">
              <thead>
                <tr>
                  <th scope="col">{t.usageWhat}</th>
                  <th scope="col">{t.usageNow}</th>
                  <th scope="col">{t.usageMost}</th>
                </tr>
              </thead>
              <tbody>
                {items.map((item) => (
                  <tr key={item.quota}>
                    <th scope="row">{t.usageOf[item.quota]}</th>
                    <td>{amount(item, item.used)}</td>
                    <td>{amount(item, item.most)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Card>
        )}
      </DocumentView>
    </SectionScreen>
  );
}

const amount = ({ quota }: Usage, value: number): string =>
  quota === 'storedBytes' ? `${number(value / 1_000_000)} MB` : number(value);
