import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

type Properties = {
  /** Said by readers; not shown, since the heading above says it. */
  caption: string;
  heads: readonly string[];
  rows: readonly (readonly ComponentChildren[])[];
  /** Which columns hold figures, to be read from the right. */
  figures?: readonly number[];
};
/** A dense table that scrolls by itself where it is too wide, and is a stop for the keyboard only then. */
export function Table({ caption, heads, rows, figures = [] }: Properties) {
  const pane = useRef<HTMLDivElement>(null);
  const [scrolls, setScrolls] = useState(false);
  useEffect(() => {
    const element = pane.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => setScrolls(element.scrollWidth > element.clientWidth + 1));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const side = (at: number) => (figures.includes(at) ? { class: 'table-figure' } : {});
  return (
    <div class="wide" ref={pane} {...(scrolls ? { tabIndex: 0, role: 'region', 'aria-label': caption } : {})}>
      <table class="table-dense">
        <caption class="for-readers-only">{caption}</caption>
        <thead>
          <tr>
            {heads.map((head, at) => (
              <th key={head} scope="col" {...side(at)}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, row) => (
            <tr key={row}>
              {cells.map((cell, at) =>
                at === 0 ? (
                  <th key={heads[at]} scope="row" {...side(at)}>
                    {cell}
                  </th>
                ) : (
                  <td key={heads[at]} {...side(at)}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
