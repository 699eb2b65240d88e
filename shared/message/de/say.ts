import {
  dateFormat,
  dayAndTimeOptions,
  encodingNames,
  hoursAndMinutes,
  modeGbps,
  needed,
  percentage,
  rounded,
  watched,
} from '../figures.ts';
import { joined, startOf } from '../joined.ts';
import { markName, markText } from '../marks.ts';
import { rendered } from '../render.ts';
import type { Case, Say } from '../say.ts';
import type { Language } from '../sentences.ts';
import type { Kinds, NamedDevice, NamedPlace, NamedPort } from '../values.ts';
import { deTerms } from './terms.ts';

const quoted = (given: string): string => `„${markName(given)}“`;
const idOf = (isShared: boolean, id: string): string => (isShared ? ` (${id})` : '');
const decimal = (figure: string): string => figure.replace('.', ',');

const bare = ({ role, name, deviceId, isShared }: NamedDevice): string =>
  role === null ? `Gerät ${quoted(deviceId)}` : `${markName(name)}${idOf(isShared, deviceId)}`;
const withRole = ({ role, name, deviceId, isShared }: NamedDevice): string =>
  role === null
    ? `Gerät ${quoted(deviceId)}`
    : `${deTerms.role[role]} ${quoted(name)}${idOf(isShared, deviceId)}`;
const label = ({ portId, label: shown, isShared }: NamedPort): string =>
  `${quoted(shown)}${idOf(isShared, portId)}`;
const socket = (port: NamedPort): string => `${bare(port.device)} ${label(port)}`;

/** The article of what has one; nominative and accusative are alike for all that a place can be. */
const the = { feminine: { other: 'die', dative: 'der' }, neuter: { other: 'das', dative: 'dem' } };
const article = (gender: keyof typeof the, as: Case): string =>
  the[gender][as === 'dative' ? 'dative' : 'other'];

function place(named: NamedPlace, as: Case = 'nominative'): string {
  switch (named.kind) {
    case 'chain':
      return `${article('feminine', as)} Kette ${quoted(named.name)}`;
    case 'device':
      return withRole(named);
    case 'port':
      return `Buchse ${label(named)} an ${withRole(named.device)}`;
    case 'link': {
      if (named.ends === null) return `Verbindung ${quoted(named.linkId)}`;
      const joins = `von ${socket(named.ends.from)} zu ${socket(named.ends.to)}`;
      return named.isExtender
        ? `${article('feminine', as)} Verlängerung über verdrillte Paare ${joins}`
        : `${article('neuter', as)} Kabel ${joins}`;
    }
    case 'outside':
      return 'etwas, das nicht im Modell steht';
  }
}

const constructions: Record<Kinds['construction'], string> = {
  passiveCopper: 'passives Kupfer',
  activeCopper: 'aktives Kupfer',
  activeOptical: 'aktiv optisch',
  twistedPairExtender: 'Verlängerung über verdrillte Paare',
};
const categories: Record<Kinds['category'], string> = {
  standard: 'Standard',
  highSpeed: 'High Speed',
  premiumHighSpeed: 'Premium High Speed',
  ultraHighSpeed: 'Ultra High Speed',
  unknown: 'Kategorie nicht bekannt',
};

const gbps = (rateGbps: number): string => `${decimal(rounded(rateGbps, 2))} Gbit/s`;
const words = { lessThan: 'weniger als', moreThan: 'mehr als', decimal };
const pluralRules = new Intl.PluralRules('de');

/** German in a time zone. */
export const germanSay = (language: Language, zone: string): Say => ({
  // Labels are nouns, or verbs that stand for the button: they keep their capital.
  term: (list, value) => deTerms[list][value] as string,
  construction: (construction) => constructions[construction],
  category: (category) => categories[category],
  place,
  device: bare,
  socket,
  label,
  text: markText,
  name: markName,
  quoted,
  message: (message) => rendered(message, language, zone),
  messages: (messages) => messages.map((one) => rendered(one, language, zone)).join(' '),
  and: (items) => joined(items, 'und'),
  or: (items) => joined(items, 'oder'),
  number: (value, digits = 2) => decimal(rounded(value, digits)),
  plural: (count, one, other) => (pluralRules.select(count) === 'one' ? one : other),
  times: (count) => (count === 1 ? 'einmal' : `${count}-mal`),
  minutesWatched: (minutes) => `${decimal(watched(minutes))} min`,
  minutesNeeded: (minutes) => `${decimal(needed(minutes))} min`,
  lengthOfTime: hoursAndMinutes,
  metres: (lengthM) => `${decimal(rounded(lengthM, 2))} m`,
  gbps,
  percent: (probability) => percentage(probability, words),
  format: (format) =>
    `${format.widthPx}×${format.heightPx}${format.interlaced ? 'i' : 'p'}${decimal(rounded(format.refreshHz, 3))} ${encodingNames[format.encoding]} ${format.bitsPerComponent} Bit`,
  mode: (mode) =>
    `${mode.kind === 'tmds' ? `TMDS ${decimal(rounded(mode.maxCharacterRateMHz, 3))} MHz` : `FRL ${mode.lanes} × ${decimal(rounded(mode.gbpsPerLane, 2))} Gbit/s`} (${gbps(modeGbps(mode))})`,
  moment: (instant) => dateFormat('de-DE', zone, dayAndTimeOptions).format(new Date(instant)),
  date: (day) => dateFormat('de-DE', 'UTC', { dateStyle: 'long' }).format(new Date(day)),
  start: startOf,
});
