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
import type { Say } from '../say.ts';
import type { Language } from '../sentences.ts';
import type { Kinds, NamedDevice, NamedPlace, NamedPort } from '../values.ts';
import { enTerms } from './terms.ts';

const quoted = (given: string): string => `'${markName(given)}'`;
const idOf = (isShared: boolean, id: string): string => (isShared ? ` (${id})` : '');
/** A label inside a sentence: with a small letter, but `EDID readings` and `HDR` as they are. */
const inside = (label: string): string =>
  /^\p{Lu}\p{Ll}/u.test(label) || /^A /.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;

const bare = ({ role, name, deviceId, isShared }: NamedDevice): string =>
  role === null ? `device ${quoted(deviceId)}` : `${markName(name)}${idOf(isShared, deviceId)}`;
const withRole = ({ role, name, deviceId, isShared }: NamedDevice): string =>
  role === null
    ? `device ${quoted(deviceId)}`
    : `${inside(enTerms.role[role])} ${quoted(name)}${idOf(isShared, deviceId)}`;
const label = ({ portId, label: shown, isShared }: NamedPort): string =>
  `${quoted(shown)}${idOf(isShared, portId)}`;
const socket = (port: NamedPort): string => `${bare(port.device)} ${label(port)}`;

function place(named: NamedPlace): string {
  switch (named.kind) {
    case 'chain':
      return `the chain ${quoted(named.name)}`;
    case 'device':
      return withRole(named);
    case 'port':
      return `port ${label(named)} of ${withRole(named.device)}`;
    case 'link':
      return named.ends === null
        ? `link ${quoted(named.linkId)}`
        : `the ${named.isExtender ? 'twisted-pair extender' : 'cable'} from ${socket(named.ends.from)} to ${socket(named.ends.to)}`;
    case 'outside':
      return 'something that is not in the model';
  }
}

const constructions: Record<Kinds['construction'], string> = {
  passiveCopper: 'passive copper',
  activeCopper: 'active copper',
  activeOptical: 'active optical',
  twistedPairExtender: 'twisted-pair extender',
};
const categories: Record<Kinds['category'], string> = {
  standard: 'Standard',
  highSpeed: 'High Speed',
  premiumHighSpeed: 'Premium High Speed',
  ultraHighSpeed: 'Ultra High Speed',
  unknown: 'category not known',
};

const gbps = (rateGbps: number): string => `${rounded(rateGbps, 2)} Gbit/s`;
const words = { lessThan: 'less than', moreThan: 'more than', decimal: (figure: string) => figure };
const pluralRules = new Intl.PluralRules('en');

/** English in a time zone. */
export const englishSay = (language: Language, zone: string): Say => ({
  term: (list, value) => inside(enTerms[list][value] as string),
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
  and: (items) => joined(items, 'and'),
  or: (items) => joined(items, 'or'),
  number: (value, digits = 2) => rounded(value, digits),
  plural: (count, one, other) => (pluralRules.select(count) === 'one' ? one : other),
  times: (count) => (count === 1 ? 'once' : `${count} times`),
  minutesWatched: (minutes) => `${watched(minutes)} min`,
  minutesNeeded: (minutes) => `${needed(minutes)} min`,
  lengthOfTime: hoursAndMinutes,
  metres: (lengthM) => `${rounded(lengthM, 2)} m`,
  gbps,
  percent: (probability) => percentage(probability, words),
  format: (format) =>
    `${format.widthPx}×${format.heightPx}${format.interlaced ? 'i' : 'p'}${rounded(format.refreshHz, 3)} ${encodingNames[format.encoding]} ${format.bitsPerComponent} bit`,
  mode: (mode) =>
    `${mode.kind === 'tmds' ? `TMDS ${rounded(mode.maxCharacterRateMHz, 3)} MHz` : `FRL ${mode.lanes} × ${rounded(mode.gbpsPerLane, 2)} Gbit/s`} (${gbps(modeGbps(mode))})`,
  moment: (instant) => dateFormat('en-GB', zone, dayAndTimeOptions).format(new Date(instant)),
  date: (day) => dateFormat('en-GB', 'UTC', { dateStyle: 'long' }).format(new Date(day)),
  start: startOf,
});
