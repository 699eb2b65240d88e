import { type CommonWords, commonSay } from '../common-say.ts';
import { englishFigures } from '../figures.ts';
import { markName } from '../marks.ts';
import { rendered } from '../render.ts';
import type { Say } from '../say.ts';
import type { PartOfLanguage } from '../sentences.ts';
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

const verdicts: Record<Kinds['verdict'], string> = {
  cleared: 'cleared',
  persists: 'persists',
  inconclusive: 'inconclusive',
};
const sides: Record<Kinds['side'], string> = { input: 'upstream', output: 'downstream' };

const words: CommonWords = {
  locale: 'en-GB',
  pluralRules: new Intl.PluralRules('en'),
  and: 'and',
  or: 'or',
  figures: englishFigures,
  percent: { lessThan: 'less than', moreThan: 'more than' },
};

/** English with these sentences. */
export function englishOf<Sentences extends PartOfLanguage['sentences']>(sentences: Sentences) {
  const english = {
    tag: 'en' as const,
    quotes: ['“', '”'] as const,
    sentences,
    say: (zone: string): Say => englishSay(english, zone),
  };
  return english;
}

const englishSay = (language: PartOfLanguage, zone: string): Say => ({
  ...commonSay(language, words, zone),
  term: (list, value) => inside(enTerms[list][value] as string),
  // Its label comes with the sentences of changes, which a phone's first load does not bring.
  change: (change) => inside(rendered({ code: 'changeName', values: { change } }, language, zone)),
  construction: (construction) => enTerms.construction[construction],
  category: (category) => enTerms.category[category],
  verdict: (verdict) => verdicts[verdict],
  side: (side) => sides[side],
  place,
  device: bare,
  socket,
  label,
  quoted,
  times: (count) => (count === 1 ? 'once' : `${count} times`),
});
