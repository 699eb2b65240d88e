import type { LanguageTag } from '../contract/language-names.ts';
import type { codes } from './codes/index.ts';
import type { Say } from './say.ts';
import type { CodeTable, ValuesOf } from './values.ts';

/** The sentences of one language for a table of codes: a code that lacks one is a type error. */
export type Sentences<Table extends CodeTable> = {
  readonly [Code in keyof Table]: (values: ValuesOf<Table[Code]>, say: Say) => string;
};
export type Codes = typeof codes;
export type Code = keyof Codes;
/** All a language has to bring: its sentences, and what they are put together with. */
export type Language = {
  readonly tag: LanguageTag;
  /** Around what a person wrote, in plain text. */
  readonly quotes: readonly [string, string];
  readonly sentences: Sentences<Codes>;
  readonly say: (zone: string) => Say;
};
/** A language as far as it is there: a phone's first load brings the sentences of its first screens alone. */
export type PartOfLanguage = Omit<Language, 'sentences'> & {
  readonly sentences: Partial<Language['sentences']> & Pick<Language['sentences'], 'unknownMessage'>;
};
