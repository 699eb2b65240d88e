import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { Case } from '../../../../shared/message/say.ts';
import { type Html, html } from '../../../page/html.ts';
import { spoken } from './tongue.ts';
import { moment, nameOf } from './words.ts';

/** The chain that a case speaks of: as found, or the newest description while nobody recorded it. */
export const chainOf = (file: CaseFile): Chain => file.triage.asFound?.chain ?? file.chain.now.chain;

export const placeWords = (file: CaseFile, place: Place, as?: Case): string =>
  spoken(file, (say) => say.place(namedPlace(chainOf(file), place), as));
/** A device where a sentence names it after a preposition. */
export const deviceWords = (file: CaseFile, deviceId: string): string =>
  placeWords(file, { kind: 'device', deviceId }, 'dative');

/** Who did it and when, UTC. */
export const signature = (file: CaseFile, by: { at: string; by: string }): string =>
  `${nameOf(file, by.by)}, ${moment(by.at)}`;

/** Facts with their names; those without a value are left out. */
export const facts = (pairs: readonly (readonly [string, string | Html | null | false])[]): Html =>
  html`<dl>${pairs.map(([name, value]) => value !== null && value !== false && value !== '' && html`<dt>${name}</dt><dd>${value}</dd>`)}</dl>`;

/** What does not count any more, and why. */
export const struck = (what: string | Html | null, why: string): Html => html`<s>${what}</s> ${why}`;
