import { useEffect, useState } from 'preact/hooks';
import type { FaultFigure } from '../../../../shared/contract/organisation.ts';
import { Wide } from '../../parts/wide.tsx';
import { language } from '../../words/language.ts';
import { sectionOf } from './figure-names.ts';
import { figureWords } from './figure-words.ts';
import { figureGroupWords } from './words.ts';

/** A figure as it stands on the screen. */
export type ShownFigure = Omit<FaultFigure, 'origin'> & {
  name: string;
  origin: string;
  /** What stands in the field of the firm's own figure. */
  text: string;
  /** It is saved as theirs; it was typed and is not yet saved. */
  isOurs: boolean;
  isEdited: boolean;
  error: string | undefined;
};

/** A group of figures that unfolds; its rows are drawn only then, since there are a thousand in all. */
export function FigureGroup({
  title,
  about,
  figures,
  isOpen,
  namesGroup = false,
  onChange,
}: {
  title: string;
  about: string | null;
  figures: readonly ShownFigure[];
  isOpen: boolean;
  /** Each figure says which group it is of. */
  namesGroup?: boolean;
  onChange(path: string, text: string): void;
}) {
  const t = figureGroupWords();
  const isRefused = figures.some(({ error }) => error !== undefined);
  const [isUnfolded, setUnfolded] = useState(isOpen);
  useEffect(() => setUnfolded(isOpen || isRefused), [isOpen, isRefused]);
  const ours = figures.filter(({ isOurs }) => isOurs).length;
  return (
    <details
      class="figure-group"
      open={isUnfolded}
      onToggle={({ currentTarget }) => setUnfolded(currentTarget.open)}
    >
      <summary>
        {title} <span class="soft">{namesGroup ? ours : t.figuresIn(figures.length, ours)}</span>
      </summary>
      {isUnfolded && about !== null && <p>{about}</p>}
      {isUnfolded && figures.length > 0 && (
        <Wide label={title}>
          <table class="figure-table">
            <thead>
              <tr>
                <th scope="col">{t.figure}</th>
                <th scope="col" class="figures">
                  {t.builtIn}
                </th>
                <th scope="col">{t.origin}</th>
                <th scope="col">{t.own}</th>
              </tr>
            </thead>
            <tbody>
              {figures.map((figure) => (
                <Row key={figure.path} figure={figure} namesGroup={namesGroup} onChange={onChange} />
              ))}
            </tbody>
          </table>
        </Wide>
      )}
    </details>
  );
}

function Row({
  figure: { path, name, figure, origin, text, isOurs, isEdited, error },
  namesGroup,
  onChange,
}: {
  figure: ShownFigure;
  namesGroup: boolean;
  onChange(path: string, text: string): void;
}) {
  const t = figureGroupWords();
  const group = figureWords[language.value].sections[sectionOf(path)]?.title;
  return (
    <tr class={isOurs || isEdited ? 'figure-own' : ''}>
      <th scope="row">
        {namesGroup && group !== undefined && <span class="soft">{group}: </span>}
        {name}
      </th>
      <td class="figures">{figure}</td>
      <td>{origin}</td>
      <td>
        <input
          class="field-control"
          type="number"
          step="any"
          aria-label={t.ownOf(name)}
          aria-invalid={error !== undefined}
          value={text}
          onInput={({ currentTarget }) => onChange(path, currentTarget.value)}
        />
        {error !== undefined && <span class="field-error">✕ {error}</span>}
      </td>
    </tr>
  );
}
