import { useState } from 'preact/hooks';
import type { FaultFigure } from '../../../shared/contract/organisation.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { faultAt } from '../parts/fault-at.ts';
import { Field } from '../parts/field.tsx';
import { Tick } from '../parts/tick.tsx';
import { useDocument } from '../store/documents.ts';
import { SaveRow } from './save-row.tsx';
import { SectionScreen } from './section-screen.tsx';
import { useSectionDraft, useSettings } from './use-settings.ts';
import { adminWords } from './words.ts';

/** As many rows as are drawn at first: a phone scrolls no further at once. */
const firstRows = 40;

/** Every figure that suspects are ranked by, where it is from, and the firm's own in its place. */
export function FaultModelScreen() {
  const t = adminWords();
  const model = useDocument(paths.faultModel);
  return (
    <SectionScreen title={t.figures}>
      <p>{t.figuresHint}</p>
      <DocumentView document={model}>{({ items }) => <Figures items={items} />}</DocumentView>
    </SectionScreen>
  );
}

function Figures({ items }: { items: readonly FaultFigure[] }) {
  const t = adminWords();
  const { document, sending, save, isSaved, touch } = useSettings();
  const [filter, setFilter] = useState('');
  const [onlyOwn, setOnlyOwn] = useState(false);
  const [rows, setRows] = useState(firstRows);
  /** Fields that were touched, by path; empty text: back to the built-in figure. */
  const section = useSectionDraft<Record<string, string>>('fault-model', {
    fields: {},
    version: document.body?.version ?? 0,
  });
  if (section === null) return null;
  const edits = section.fields;
  const words = filter
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const shown = items.filter(
    ({ path, own, origin }) =>
      words.every((word) => `${path} ${origin}`.toLowerCase().includes(word)) &&
      (!onlyOwn || own !== null || edits[path] !== undefined),
  );
  const send = async () => {
    const kept = items.flatMap(({ path, own }): [string, number][] => {
      const text = edits[path] ?? (own === null ? '' : String(own));
      return text.trim() === '' ? [] : [[path, Number(text)]];
    });
    if (await save({ faultModel: Object.fromEntries(kept) })) await section.forget();
  };
  const pointer = (path: string) => `/settings/faultModel/${path.replaceAll('/', '~1')}`;
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <div class="admin-fields">
        <Field
          label={t.filter}
          type="search"
          value={filter}
          onInput={({ currentTarget }) => {
            setFilter(currentTarget.value);
            setRows(firstRows);
          }}
        />
        <Tick label={t.onlyOwn} isOn={onlyOwn} onChange={setOnlyOwn} />
      </div>
      <p role="status">{t.figureCount(shown.length, items.length)}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls by itself has to be reached by keyboard */}
      <section class="wide" tabIndex={0} aria-label={t.figures}>
        <table class="figure-table">
          <thead>
            <tr>
              <th scope="col">{t.figures}</th>
              <th scope="col">{t.builtIn}</th>
              <th scope="col">{t.origin}</th>
              <th scope="col">{t.own}</th>
            </tr>
          </thead>
          <tbody>
            {shown.slice(0, rows).map(({ path, figure, origin, own }) => {
              const error = faultAt(sending.problem, pointer(path));
              const text = edits[path] ?? (own === null ? '' : String(own));
              return (
                <tr key={path} class={text === '' ? '' : 'figure-own'}>
                  <th scope="row">{path.replaceAll('/', ' / ')}</th>
                  <td class="figures">{figure}</td>
                  <td>{t.origins[origin] ?? origin}</td>
                  <td>
                    <input
                      class="field-control"
                      type="number"
                      step="any"
                      aria-label={t.ownOf(path)}
                      aria-invalid={error !== undefined}
                      value={text}
                      onInput={({ currentTarget }) => {
                        touch();
                        section.change({ [path]: currentTarget.value });
                      }}
                    />
                    {error !== undefined && <span class="field-error">✕ {error}</span>}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
      {shown.length > rows && (
        <div>
          <Button onClick={() => setRows(rows + 100)}>{t.moreFigures}</Button>
        </div>
      )}
      <SaveRow settings={{ sending, isSaved }} draft={section} disabled={Object.keys(edits).length === 0}>
        {Object.keys(edits).length > 0 && <span>{t.unsaved(Object.keys(edits).length)}</span>}
      </SaveRow>
    </form>
  );
}
