import { longest } from '../../../shared/contract/limits.ts';
import type { OrganisationSettings } from '../../../shared/contract/organisation.ts';
import { Button } from '../parts/button.tsx';
import { Card } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Field, TextField } from '../parts/field.tsx';
import { SaveRow } from './save-row.tsx';
import { SectionScreen } from './section-screen.tsx';
import { useSectionDraft, useSettings } from './use-settings.ts';
import { adminWords } from './words.ts';

type Row = OrganisationSettings['recognition'][number];
/** A row as its fields show it. */
type Fields = { kind: string; all: string; none: string; example: string; note: string };

const fieldsOf = ({ kind, all, none, example, note }: Row): Fields => ({
  kind,
  all: all.map((group) => group.join(' | ')).join('\n'),
  none: none.join(' | '),
  example,
  note,
});
const parts = (text: string): string[] =>
  text
    .split('|')
    .map((part) => part.trim())
    .filter((part) => part !== '');
const rowOf = ({ kind, all, none, example, note }: Fields): Row => ({
  kind: kind.trim(),
  all: all
    .split('\n')
    .map(parts)
    .filter((group) => group.length > 0),
  none: parts(none),
  example,
  note,
});

/** How the firm's own devices word things in their logs. */
export function RecognitionScreen() {
  const t = adminWords();
  const settings = useSettings();
  return (
    <SectionScreen title={t.recognition}>
      <p>{t.rowsHint}</p>
      <DocumentView document={settings.document}>
        {({ settings: { recognition }, version }) => (
          <Rows begin={recognition.map(fieldsOf)} version={version} settings={settings} />
        )}
      </DocumentView>
    </SectionScreen>
  );
}

function Rows({
  begin,
  version,
  settings: { sending, save, isSaved, touch },
}: {
  begin: readonly Fields[];
  version: number;
  settings: ReturnType<typeof useSettings>;
}) {
  const t = adminWords();
  const section = useSectionDraft('logs', { fields: { rows: begin }, version });
  if (section === null) return null;
  const { rows } = section.fields;
  const setRows = (next: readonly Fields[]) => {
    touch();
    section.change({ rows: next });
  };
  const change = (at: number, part: Partial<Fields>) =>
    setRows(rows.map((row, index) => (index === at ? { ...row, ...part } : row)));
  return (
    <form
      class="stack admin-form"
      onSubmit={async (event) => {
        event.preventDefault();
        if (await save({ recognition: rows.map(rowOf) })) await section.forget();
      }}
    >
      {rows.length === 0 && <p>{t.noRows}</p>}
      {rows.map((row, at) => (
        <Card key={at} title={t.row(row.kind)}>
          <Field
            label={t.kind}
            hint={t.kindHint}
            required
            pattern="[a-z][A-Za-z]{1,39}"
            value={row.kind}
            onInput={({ currentTarget }) => change(at, { kind: currentTarget.value })}
          />
          <TextField
            label={t.all}
            required
            value={row.all}
            onInput={({ currentTarget }) => change(at, { all: currentTarget.value })}
          />
          <Field
            label={t.none}
            optional
            value={row.none}
            onInput={({ currentTarget }) => change(at, { none: currentTarget.value })}
          />
          <Field
            label={t.example}
            required
            maxLength={longest.note}
            value={row.example}
            onInput={({ currentTarget }) => change(at, { example: currentTarget.value })}
          />
          <Field
            label={t.note}
            optional
            maxLength={longest.note}
            value={row.note}
            onInput={({ currentTarget }) => change(at, { note: currentTarget.value })}
          />
          <div>
            <Button kind="quiet" onClick={() => setRows(rows.filter((_, index) => index !== at))}>
              {t.removeRow(row.kind)}
            </Button>
          </div>
        </Card>
      ))}
      <div>
        <Button onClick={() => setRows([...rows, { kind: '', all: '', none: '', example: '', note: '' }])}>
          {t.addRow}
        </Button>
      </div>
      <SaveRow settings={{ sending, isSaved }} draft={section} />
    </form>
  );
}
