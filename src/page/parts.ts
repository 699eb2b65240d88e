import { type Html, html } from './html.ts';

export const list = (items: readonly (string | Html)[]): Html | null =>
  items.length === 0 ? null : html`<ul>${items.map((item) => html`<li>${item}</li>`)}</ul>`;

/** A table that scrolls by itself on a narrow screen; nothing where there are no rows. */
export const table = (
  head: readonly string[],
  rows: readonly (readonly (string | number | Html | null)[])[],
): Html | null =>
  rows.length === 0
    ? null
    : html`<div class="wide"><table><thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead>
      <tbody>${rows.map((row) => html`<tr>${row.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody></table></div>`;

export const section = (id: string, title: string, ...content: (Html | string | null | false)[]): Html =>
  html`<section id="${id}"><h2>${title}</h2>${content}</section>`;

export const none = (text: string): Html => html`<p class="quiet">${text}</p>`;
