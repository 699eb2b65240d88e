import {
  bitRate,
  dateFormat,
  dayAndTime,
  type FigureWords,
  formatFigures,
  hoursAndMinutes,
  modeFigures,
  needed,
  type PercentWords,
  percentage,
  rounded,
  watched,
} from './figures.ts';
import { joined, startOf } from './joined.ts';
import { markName, markTyped } from './marks.ts';
import { rendered } from './render.ts';
import type { Say } from './say.ts';
import type { PartOfLanguage } from './sentences.ts';

/** The words that a language brings for what is put together alike in all of them. */
export type CommonWords = {
  /** For dates. */
  locale: string;
  /** Which form of a word goes with a number. */
  pluralRules: Intl.PluralRules;
  and: string;
  or: string;
  figures: FigureWords;
  percent: Omit<PercentWords, 'decimal'>;
};

/** What differs between languages by more than words: names of places and of terms, and how quotes look. */
type Own =
  | 'term'
  | 'change'
  | 'construction'
  | 'category'
  | 'verdict'
  | 'side'
  | 'place'
  | 'device'
  | 'socket'
  | 'label'
  | 'quoted'
  | 'times';

/** What of `Say` every language has alike, in a time zone. */
export function commonSay(language: PartOfLanguage, words: CommonWords, zone: string): Omit<Say, Own> {
  const { locale, figures, pluralRules } = words;
  const message: Say['message'] = (one) => rendered(one, language, zone);
  return {
    text: (typed) => markTyped(typed, (values) => message({ code: 'erased', values })),
    name: markName,
    message,
    messages: (messages) => messages.map(message).join(' '),
    and: (items) => joined(items, words.and),
    or: (items) => joined(items, words.or),
    number: (value, digits = 2) => figures.decimal(rounded(value, digits)),
    plural: (count, one, other) => (pluralRules.select(count) === 'one' ? one : other),
    minutesWatched: (minutes) => `${figures.decimal(watched(minutes))} min`,
    minutesNeeded: (minutes) => `${figures.decimal(needed(minutes))} min`,
    lengthOfTime: hoursAndMinutes,
    metres: (lengthM) => `${figures.decimal(rounded(lengthM, 2))} m`,
    gbps: (rateGbps) => bitRate(rateGbps, figures),
    percent: (probability) => percentage(probability, { ...words.percent, decimal: figures.decimal }),
    format: (format) => formatFigures(format, figures),
    mode: (mode) => modeFigures(mode, figures),
    moment: (instant) => dayAndTime(instant, locale, zone),
    date: (day) => dateFormat(locale, 'UTC', { dateStyle: 'long' }).format(new Date(day)),
    start: startOf,
  };
}
