import { placeName } from '../../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { type Html, html } from './html.ts';
import { moment, nameOf } from './words.ts';

/** The chain that a case speaks of: as found, or the newest description while nobody recorded it. */
export const chainOf = (file: CaseFile): Chain => file.triage.asFound?.chain ?? file.chain.now.chain;

export const placeWords = (file: CaseFile, place: Place): string => placeName(chainOf(file), place);

/** Who did it and when, UTC. */
export const signature = (file: CaseFile, by: { at: string; by: string }): string =>
  `${nameOf(file, by.by)}, ${moment(by.at)}`;

/** Facts with their names; those without a value are left out. */
export const facts = (pairs: readonly (readonly [string, string | Html | null | false])[]): Html =>
  html`<dl>${pairs.map(([name, value]) => value !== null && value !== false && value !== '' && html`<dt>${name}</dt><dd>${value}</dd>`)}</dl>`;

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
