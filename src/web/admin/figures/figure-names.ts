import type { Message } from '../../../../shared/contract/message.ts';
import { changeKinds } from '../../../../shared/contract/triage-names.ts';
import { failureModes, modeMessages } from '../../../../shared/isolation/failure-modes.ts';
import { type MessageTerms, message } from '../../../../shared/message/index.ts';
import type { FigureWords } from './figure-words.ts';

/** What a part of a figure's path is one of; what its list does not have is a word of the table's own. */
type PartKind =
  | 'mode'
  | 'construction'
  | 'role'
  | 'symptom'
  | 'trigger'
  | 'onlyWith'
  | 'changed'
  | 'change'
  | 'own';

/** The groups that figures are shown in, by the first part of their path and in this order, with what follows in it. */
export const figureSections: Readonly<Record<string, readonly PartKind[]>> = {
  linkWeights: ['mode', 'construction'],
  deviceWeights: ['mode', 'role'],
  chainWeights: ['mode', 'own'],
  symptomChances: ['mode', 'symptom'],
  contentChances: ['mode', 'own'],
  patternChances: ['mode', 'own'],
  triggerChances: ['mode', 'trigger'],
  onlyWithFactors: ['onlyWith', 'mode'],
  changedFactors: ['changed', 'mode'],
  historyFactors: ['own', 'mode'],
  weighing: [],
  effects: ['change', 'own', 'mode'],
  provocations: ['change', 'own', 'mode'],
  changeMinutes: ['change', 'own'],
  coincidence: ['own', 'mode'],
  menuStays: ['own', 'mode'],
  readings: ['own', 'mode'],
  witnesses: ['own', 'mode'],
  facts: ['own', 'mode'],
  effort: ['own', 'change'],
  planning: [],
};

/** Which group a figure is shown in. */
export const sectionOf = (path: string): string => path.slice(0, path.indexOf('/'));

/** A language, as far as figures are named in it. */
export type Tongue = { words: FigureWords; terms: MessageTerms; said(what: Message): string };

/**
 * What a figure is called within its group.
 *
 * @returns the path itself for a figure that this version does not know
 */
export function figureName(path: string, tongue: Tongue): string {
  const { whole, parts } = tongue.words;
  const alone = whole[path];
  if (alone !== undefined) return alone;
  const [section = '', ...rest] = path.split('/');
  const kinds = figureSections[section] ?? [];
  const names = rest.map(
    (part, at) => parts[`${section}/${part}`] ?? nameIn(kinds[at] ?? 'own', part, tongue) ?? parts[part],
  );
  return names.some((name) => name === undefined) ? path : capital(names.join(': '));
}

function nameIn(kind: PartKind, part: string, { terms, said }: Tongue): string | undefined {
  const mode = failureModes.find((each) => each === part);
  const change = changeKinds.find((each) => each === part);
  if (kind === 'mode') return mode && said(modeMessages[mode]);
  if (kind === 'change') return change && said(message('changeName', { change }));
  const { construction, role, symptom, patternTrigger, onlyWith, whatChanged } = terms;
  const lists: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    construction,
    role,
    symptom,
    trigger: patternTrigger,
    onlyWith,
    changed: whatChanged,
  };
  return lists[kind]?.[part];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
