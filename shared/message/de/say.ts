import { type CommonWords, commonSay } from '../common-say.ts';
import { markName } from '../marks.ts';
import { rendered } from '../render.ts';
import type { Case, Say } from '../say.ts';
import type { Language } from '../sentences.ts';
import type { Kinds, NamedDevice, NamedPlace, NamedPort } from '../values.ts';
import { deTerms } from './terms.ts';

const quoted = (given: string): string => `„${markName(given)}“`;
const idOf = (isShared: boolean, id: string): string => (isShared ? ` (${id})` : '');

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

const verdicts: Record<Kinds['verdict'], string> = {
  cleared: 'behoben',
  persists: 'noch da',
  inconclusive: 'offen',
};
const sides: Record<Kinds['side'], string> = { input: 'vor', output: 'hinter' };

const words: CommonWords = {
  locale: 'de-DE',
  pluralRules: new Intl.PluralRules('de'),
  and: 'und',
  or: 'oder',
  figures: { decimal: (figure) => figure.replace('.', ','), bit: 'Bit' },
  percent: { lessThan: 'weniger als', moreThan: 'mehr als' },
};

/** German in a time zone. */
export const germanSay = (language: Language, zone: string): Say => ({
  ...commonSay(language, words, zone),
  // Labels are nouns, or verbs that stand for the button: they keep their capital.
  term: (list, value) => deTerms[list][value] as string,
  // Its label comes with the sentences of changes, which a phone's first load does not bring.
  change: (change) => rendered({ code: 'changeName', values: { change } }, language, zone),
  construction: (construction) => deTerms.construction[construction],
  category: (category) => deTerms.category[category],
  verdict: (verdict) => verdicts[verdict],
  side: (side) => sides[side],
  place,
  device: bare,
  socket,
  label,
  quoted,
  times: (count) => (count === 1 ? 'einmal' : `${count}-mal`),
});
