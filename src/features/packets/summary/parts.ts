import { placeName } from '../../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { english } from '../../../../shared/message/en/index.ts';
import { type Message, messageText } from '../../../../shared/message/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { moment, nameOf } from './words.ts';

/** The chain that a case speaks of: as found, or the newest description while nobody recorded it. */
export const chainOf = (file: CaseFile): Chain => file.triage.asFound?.chain ?? file.chain.now.chain;

export const placeWords = (file: CaseFile, place: Place): string => placeName(chainOf(file), place);

/** A message in the language of the summary, its moments in UTC. */
export const inEnglish = (said: Message): string => messageText(said, english, 'UTC');

/** Who did it and when, UTC. */
export const signature = (file: CaseFile, by: { at: string; by: string }): string =>
  `${nameOf(file, by.by)}, ${moment(by.at)}`;

/** Facts with their names; those without a value are left out. */
export const facts = (pairs: readonly (readonly [string, string | Html | null | false])[]): Html =>
  html`<dl>${pairs.map(([name, value]) => value !== null && value !== false && value !== '' && html`<dt>${name}</dt><dd>${value}</dd>`)}</dl>`;
