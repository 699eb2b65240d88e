import { deTerms as germanTerms } from '../../../../shared/message/de/terms.ts';

// What shared code calls a place (shared/chain/place.ts), in German. Names and labels stay as they are, in German quotes.

export const roles = { ...germanTerms.role, device: 'Gerät' } as const;
const roleNames = Object.keys(roles)
  .map((role) => `[${role.charAt(0).toUpperCase()}${role.charAt(0)}]${role.slice(1)}`)
  .join('|');

/** The id behind a name or label that others bear too. */
const id = '(?: \\([^()%]+\\))?';
const device = `(?:${roleNames}) '.+?'${id}`;
/** A device's name alone: whatever people call it, but no part of a sentence. */
export const barePattern = '(?:(?!: |; |, and ).)+?';
const socket = `${barePattern} '.+?'${id}`;
const port = `[Pp]ort '.+?'${id} of ${device}`;
const link = `[Tt]he (?:cable|twisted-pair extender) from ${socket} to ${socket}`;
/** Stands for what the fault model does not hold; shared/isolation/failure-modes.ts. */
const outside = '[Ss]omething that is not in the model';

export const socketPattern = socket;
export const placePattern = `(?:[Tt]he chain '.+?'|${port}|${link}|[Ll]ink '.+?'|${device}|${outside})`;
export const quotedPattern = "'.+?'";

export const quoted = (text: string): string => `„${text}“`;

/** `plain` is nominative and accusative, which are alike for everything that a place can be. */
export type Form = 'plain' | 'dative';

const whole = (pattern: string): RegExp => new RegExp(`^(?:${pattern})$`, 'u');
const chainParts = /^the chain '(.+)'$/iu;
const portParts = /^port '(.+?)'( \([^()]+\))? of (.+)$/iu;
const linkParts = new RegExp(`^the (cable|twisted-pair extender) from (${socket}) to (${socket})$`, 'iu');
const loneLinkParts = /^link '(.+)'$/iu;
const deviceParts = /^(\w+) '(.+)'( \([^()]+\))?$/u;
const outsideWhole = whole(outside);

/** A place in a sentence; null for what is none. */
export function germanPlace(text: string, form: Form = 'plain'): string | null {
  if (outsideWhole.test(text)) return 'etwas, das nicht im Modell steht';
  const chain = chainParts.exec(text);
  if (chain !== null) return `${form === 'dative' ? 'der' : 'die'} Kette ${quoted(chain[1] ?? '')}`;
  const atPort = portParts.exec(text);
  if (atPort !== null) {
    const of = germanPlace(atPort[3] ?? '');
    return of === null ? null : `Buchse ${quoted(atPort[1] ?? '')}${atPort[2] ?? ''} an ${of}`;
  }
  const cable = linkParts.exec(text);
  if (cable !== null) return germanLink(cable, form);
  const lone = loneLinkParts.exec(text);
  if (lone !== null) return `Verbindung ${quoted(lone[1] ?? '')}`;
  const found = deviceParts.exec(text);
  const role = found?.[1]?.toLowerCase() as keyof typeof roles | undefined;
  if (found === null || role === undefined || roles[role] === undefined) return null;
  return `${roles[role]} ${quoted(found[2] ?? '')}${found[3] ?? ''}`;
}

function germanLink([, kind, from, to]: RegExpExecArray, form: Form): string {
  const joined = `von ${germanSocket(from ?? '')} zu ${germanSocket(to ?? '')}`;
  if (kind === 'cable') return `${form === 'dative' ? 'dem' : 'das'} Kabel ${joined}`;
  return `${form === 'dative' ? 'der' : 'die'} Verlängerung über verdrillte Paare ${joined}`;
}

/** `Switch 'IN 3'` → `Switch „IN 3“`. */
export function germanSocket(text: string): string {
  const parts = /^(.+) '(.+?)'( \([^()]+\))?$/u.exec(text);
  if (parts === null) return germanBare(text);
  return `${germanBare(parts[1] ?? '')} ${quoted(parts[2] ?? '')}${parts[3] ?? ''}`;
}

/** A device's bare name; what is not in the chain is called by its id. */
export const germanBare = (text: string): string => text.replace(/^device '(.+)'$/u, 'Gerät „$1“');

const words: Record<string, string> = { and: 'und', or: 'oder' };

/** `a, b and c`, each put into German; null where one of them is not known. */
export function germanList(text: string, german: (one: string) => string | null): string | null {
  // From the back, since the word stands before the last name. Names may hold commas and `and` themselves: there one
  // of the sides is none. The whole comes last, since a name could stand for all between the first quote and the last.
  for (const { index, 0: joint } of [...text.matchAll(/, | and | or /gu)].toReversed()) {
    const last = german(text.slice(index + joint.length));
    const before = last === null ? null : germanList(text.slice(0, index), german);
    if (last !== null && before !== null)
      return `${before}${joint === ', ' ? joint : ` ${words[joint.trim()]} `}${last}`;
  }
  return german(text);
}

/** `'IN 1', 'IN 2' or 'IN 3'` → `„IN 1“, „IN 2“ oder „IN 3“`. */
export const germanLabels = (text: string): string | null =>
  germanList(text, (one) => {
    const label = /^'([^']+)'$/u.exec(one);
    return label === null ? null : quoted(label[1] ?? '');
  });

/** Bare names in a row; the word before the last one is taken for a joint, also where a name holds it. */
export const germanBares = (text: string): string =>
  text.replace(/ (and|or) (?!.* (?:and|or) )/u, (_, word: string) => ` ${words[word]} `);
