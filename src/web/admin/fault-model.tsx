import { useState } from 'preact/hooks';
import type { Message } from '../../../shared/contract/message.ts';
import type { FaultFigure } from '../../../shared/contract/organisation.ts';
import { paths } from '../api/paths.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { faultAt } from '../parts/fault-at.ts';
import { Field } from '../parts/field.tsx';
import { lazyPart } from '../parts/lazy-part.tsx';
import { useDocument } from '../store/documents.ts';
import { language } from '../words/language.ts';
import { said } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { FigureGroup, type ShownFigure } from './figures/figure-group.tsx';
import { figureName, figureSections, sectionOf } from './figures/figure-names.ts';
import { figureWords } from './figures/figure-words.ts';
import { SaveRow } from './save-row.tsx';
import { SectionScreen } from './section-screen.tsx';
import { useSectionDraft, useSettings } from './use-settings.ts';
import { adminWords } from './words.ts';

const Example = lazyPart(async () => (await import('./figures/example.tsx')).FigureExample);

/** Every figure that suspects are ranked by, in words, where it is from, and the firm's own in its place. */
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

const wordsIn = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');

/** The firm's own figures by path, with what is typed and not yet saved; what can't be read as a number is left out. */
function ownFigures(figures: readonly ShownFigure[]): Record<string, number> {
  const own = figures.filter(({ text }) => text.trim() !== '' && Number.isFinite(Number(text)));
  return Object.fromEntries(own.map(({ path, text }) => [path, Number(text)]));
}

function Figures({ items }: { items: readonly FaultFigure[] }) {
  const t = adminWords();
  const w = figureWords[language.value];
  const tongue = { words: w, terms: terms(), said: (what: Message) => said(what).text };
  const { document, sending, save, isSaved, touch } = useSettings();
  const [search, setSearch] = useState('');
  /** Fields that were touched, by path; empty text: back to the built-in figure. */
  const draft = useSectionDraft<Record<string, string>>('fault-model', {
    fields: {},
    version: document.body?.version ?? 0,
  });
  if (draft === null) return null;
  const edits = draft.fields;
  const figures = items.map((item): ShownFigure => {
    const { path, own, origin } = item;
    return {
      ...item,
      name: figureName(path, tongue),
      text: edits[path] ?? (own === null ? '' : String(own)),
      isOurs: own !== null,
      isEdited: edits[path] !== undefined,
      origin: t.origins[origin] ?? origin,
      error: faultAt(sending.problem, `/settings/faultModel/${path.replaceAll('/', '~1')}`),
    };
  });
  const searched = wordsIn(search);
  const found = figures.filter(({ path, name }) => {
    const wording = `${w.sections[sectionOf(path)]?.title} ${name} ${path}`.toLowerCase();
    return searched.every((word) => wording.includes(word));
  });
  const groups = Object.keys(figureSections).flatMap((section) => {
    const ofIt = found.filter(({ path }) => sectionOf(path) === section);
    return ofIt.length === 0 ? [] : [{ section, figures: ofIt }];
  });
  const ours = found.filter(({ isOurs }) => isOurs);
  const change = (path: string, text: string) => {
    touch();
    draft.change({ [path]: text });
  };
  const send = async () => {
    const kept = figures.filter(({ text }) => text.trim() !== '');
    if (await save({ faultModel: Object.fromEntries(kept.map(({ path, text }) => [path, Number(text)])) }))
      await draft.forget();
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <Example own={ownFigures(figures)} />
      <Field
        label={t.filter}
        type="search"
        value={search}
        onInput={({ currentTarget }) => setSearch(currentTarget.value)}
      />
      <FigureGroup
        title={t.changedFigures}
        about={ours.length === 0 ? t.noneChanged : null}
        figures={ours}
        isOpen
        namesGroup
        onChange={change}
      />
      {found.length === 0 && <p role="status">{t.noFigure}</p>}
      {groups.map(({ section, figures: ofIt }) => (
        <FigureGroup
          key={section}
          title={w.sections[section]?.title ?? section}
          about={w.sections[section]?.about ?? null}
          figures={ofIt}
          isOpen={searched.length > 0 || ofIt.some(({ isEdited }) => isEdited)}
          onChange={change}
        />
      ))}
      <SaveRow settings={{ sending, isSaved }} draft={draft} disabled={Object.keys(edits).length === 0}>
        {Object.keys(edits).length > 0 && <span>{t.unsaved(Object.keys(edits).length)}</span>}
      </SaveRow>
    </form>
  );
}
