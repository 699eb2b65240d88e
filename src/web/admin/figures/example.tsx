import { useMemo, useState } from 'preact/hooks';
import type { Symptom } from '../../../../shared/contract/symptom.ts';
import { symptomKinds } from '../../../../shared/contract/triage-names.ts';
import type { Overrides } from '../../../../shared/isolation/index.ts';
import { SelectField } from '../../parts/field.tsx';
import { Wide } from '../../parts/wide.tsx';
import { percent } from '../../words/percent.ts';
import { Sentence } from '../../words/sentence.tsx';
import { terms } from '../../words/terms.ts';
import { exampleChances } from './example-chances.ts';
import { figureGroupWords } from './words.ts';

/** Suspects of the example that are worth a line. */
const mostShown = 6;

/** What the firm's own figures, saved or not, do to the suspects of a small example. */
export function FigureExample({ own }: { own: Overrides }) {
  const t = figureGroupWords();
  const { role } = terms();
  const [symptom, setSymptom] = useState<Symptom['kind']>('dropOuts');
  const chances = useMemo(
    () => exampleChances(symptom, own, { ...role, chain: t.exampleChain }),
    [symptom, role, t, JSON.stringify(own)],
  );
  return (
    <section class="card stack" aria-label={t.figureExample}>
      <h2>{t.figureExample}</h2>
      <p>{t.exampleHint}</p>
      <SelectField
        label={t.exampleSymptom}
        options={symptomKinds.map((value) => ({ value, label: terms().symptom[value] }))}
        value={symptom}
        onChoose={setSymptom}
      />
      <Wide label={t.suspect}>
        <table class="figure-table">
          <thead>
            <tr>
              <th scope="col">{t.suspect}</th>
              <th scope="col" class="figures">
                {t.builtIn}
              </th>
              <th scope="col" class="figures">
                {t.withOwn}
              </th>
            </tr>
          </thead>
          <tbody>
            {chances.slice(0, mostShown).map(({ name, builtIn, own: ours }) => (
              <tr key={JSON.stringify(name)} class={percent(ours) === percent(builtIn) ? '' : 'figure-own'}>
                <th scope="row">
                  <Sentence>{name}</Sentence>
                </th>
                <td class="figures">{percent(builtIn)}</td>
                <td class="figures">{percent(ours)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
    </section>
  );
}
