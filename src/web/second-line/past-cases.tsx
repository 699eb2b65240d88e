import './second-line.css';
import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { symptomKinds } from '../../../shared/contract/triage-names.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Field, SelectField } from '../parts/field.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { terms } from '../words/terms.ts';
import { PastList } from './past-list.tsx';
import { pastWords } from './past-words.ts';

/** Assumed: a pause this long between two letters is worth asking. */
const pauseMs = 150;

/** Every closed case, by words and symptom. What is looked for stands in the address. */
export function PastCasesScreen() {
  const t = pastWords();
  const { query, route } = useLocation();
  const symptom = symptomKinds.find((kind) => kind === query.symptom) ?? '';
  const [typed, setTyped] = useState(query.q ?? '');
  const asked = (query.q ?? '').trim();
  const show = (q: string, of: string) =>
    route(`/app/past-cases?${new URLSearchParams({ q, symptom: of })}`, true);
  useEffect(() => {
    if (typed.trim() === asked) return undefined;
    const timer = setTimeout(() => {
      if (location.pathname === '/app/past-cases') show(typed.trim(), symptom);
    }, pauseMs);
    return () => clearTimeout(timer);
  }, [typed, symptom, asked]);
  return (
    <Screen title={t.title}>
      <div class="past-fields">
        <Field
          label={t.find}
          hint={t.findHint}
          type="search"
          autocomplete="off"
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        />
        <SelectField
          label={t.symptom}
          value={symptom}
          options={[
            { value: '', label: t.any },
            ...symptomKinds.map((kind) => ({ value: kind, label: terms().symptom[kind] })),
          ]}
          onChoose={(chosen) => show(typed.trim(), chosen)}
        />
      </div>
      <PastPage key={`${asked} ${symptom}`} q={asked} symptom={symptom} before={0} />
    </Screen>
  );
}

type Asked = { q: string; symptom: string; cursor?: string; before: number };

/** A page of what was found, and the next one below it once that is asked for. */
function PastPage({ q, symptom, cursor, before }: Asked) {
  const t = pastWords();
  const found = useDocument(paths.pastCases({ q, symptom, ...(cursor === undefined ? {} : { cursor }) }));
  const [isMoreWanted, setMoreWanted] = useState(false);
  return (
    <DocumentView document={found}>
      {({ items, next }) => {
        const count = before + items.length;
        if (count === 0) return <p>{t.none}</p>;
        return (
          <>
            {before === 0 && (
              <p class="soft" role="status">
                {next === null ? t.count(count) : t.newest(count)}
              </p>
            )}
            <PastList cases={items} />
            {next !== null && !isMoreWanted && (
              <div>
                <Button onClick={() => setMoreWanted(true)}>{t.more}</Button>
              </div>
            )}
            {next !== null && isMoreWanted && (
              <PastPage q={q} symptom={symptom} cursor={next} before={count} />
            )}
          </>
        );
      }}
    </DocumentView>
  );
}
