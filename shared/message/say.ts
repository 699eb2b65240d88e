import type { Message } from '../contract/message.ts';
import type { MessageTerms, TermList } from './terms.ts';
import type { Kinds, NamedDevice, NamedPlace, NamedPort } from './values.ts';

/** How a place stands in a sentence; English knows one form, German three. */
export type Case = 'nominative' | 'accusative' | 'dative';

/**
 * What a sentence is put together with; one object a language and time zone. Everything returns text with its marks
 * inside (marks.ts), so that what people wrote can never pass for the program's words.
 */
export type Say = {
  /** The label of a value of the contract's lists, as it stands inside a sentence. */
  term<List extends TermList>(list: List, value: keyof MessageTerms[List]): string;
  /** The label of a kind of change, as it stands inside a sentence. */
  change(kind: Kinds['changeKind']): string;
  construction(construction: Kinds['construction']): string;
  category(category: Kinds['category']): string;
  verdict(verdict: Kinds['verdict']): string;
  /** Where the fault lies, seen from a device: `upstream` of it, `vor` ihm. */
  side(side: Kinds['side']): string;
  /** `the cable from Disc player 'HDMI OUT' to Switch 'IN 3'`; `processor 'Cinema processor'`. */
  place(place: NamedPlace, as?: Case): string;
  /** A device by its bare name. */
  device(device: NamedDevice): string;
  /** Device and label: `Switch 'IN 3'`. */
  socket(port: NamedPort): string;
  /** The label alone, in quotes. */
  label(port: NamedPort): string;
  /** What a person wrote; quotes are added where it is shown. */
  text(typed: string): string;
  /** A name somebody gave, without quotes. */
  name(given: string): string;
  /** A name in the language's quotes. */
  quoted(given: string): string;
  message(message: Message): string;
  /** Sentences after each other. */
  messages(messages: readonly Message[]): string;
  /** `a`, `a and b`, `a, b and c`. */
  and(items: readonly string[]): string;
  or(items: readonly string[]): string;
  number(value: number, digits?: number): string;
  /** One form for one, the other for all else. */
  plural(count: number, one: string, other: string): string;
  /** `once`, `3 times`. */
  times(count: number): string;
  /** Minutes that were watched: a decimal below ten, whole above. */
  minutesWatched(minutes: number): string;
  /** Minutes still needed, rounded up so that the text never asks for too little. */
  minutesNeeded(minutes: number): string;
  /** A length of time in hours and minutes: `1 h 20 min`. */
  lengthOfTime(minutes: number): string;
  metres(lengthM: number): string;
  gbps(rateGbps: number): string;
  /** A probability that never rounds to a plain 0 or 100. */
  percent(probability: number): string;
  /** `3840×2160p60 RGB 8 bit`; the rate to a thousandth, so that 59.94 and 60 stay apart. */
  format(format: Kinds['format']): string;
  /** `TMDS 600 MHz (18 Gbit/s)`, `FRL 4 × 12 Gbit/s (48 Gbit/s)`. */
  mode(mode: Kinds['mode']): string;
  /** Day and time in the zone asked for. */
  moment(instant: string): string;
  date(day: string): string;
  /** With its first letter in upper case, unless it begins with what somebody wrote. */
  start(text: string): string;
};
