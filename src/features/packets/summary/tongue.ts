import type { Erasure } from '../../../../shared/contract/erased-text.ts';
import type { LanguageTag } from '../../../../shared/contract/language-names.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import { deTerms, german } from '../../../../shared/message/de/index.ts';
import { english, enTerms } from '../../../../shared/message/en/index.ts';
import {
  type Language,
  type Message,
  type MessageTerms,
  message,
  messageText,
  type TermList,
} from '../../../../shared/message/index.ts';
import { plainText } from '../../../../shared/message/marks.ts';
import type { Say } from '../../../../shared/message/say.ts';
import { nameOf } from './words.ts';
import { summaryWordsDe } from './words-de.ts';
import { type SummaryWords, summaryWordsEn } from './words-en.ts';

type Tongue = { readonly language: Language; readonly terms: MessageTerms; readonly words: SummaryWords };
/** What names the language that it is written in: a case file. */
type Written = { readonly language: LanguageTag };

const tongues: Record<LanguageTag, Tongue> = {
  en: { language: english, terms: enTerms, words: summaryWordsEn },
  de: { language: german, terms: deTerms, words: summaryWordsDe },
};

/** Moments are told in UTC: a packet is read anywhere. */
const zone = 'UTC';

/** The summary's own headings and phrases. */
export const wordsOf = ({ language }: Written): SummaryWords => tongues[language].words;

/** What the contract's value is called, as a label. */
export const termOf = <List extends TermList>(
  { language }: Written,
  list: List,
  value: keyof MessageTerms[List],
): MessageTerms[List][keyof MessageTerms[List]] => tongues[language].terms[list][value];

/** A message as plain text in the language of the packet. */
export const inWords = ({ language }: Written, said: Message): string =>
  messageText(said, tongues[language].language, zone);

/** What `Say` puts together, as plain text. */
export function spoken({ language }: Written, put: (say: Say) => string): string {
  const tongue = tongues[language].language;
  return plainText(put(tongue.say(zone)), tongue.quotes);
}

/** What stands where a text was erased. */
export const erasureWords = (file: Pick<CaseFile, 'language' | 'people'>, { at, by }: Erasure): string =>
  inWords(file, message('erasedBy', { at, by: nameOf(file, by) }));
