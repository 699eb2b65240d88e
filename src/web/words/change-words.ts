import type { ComponentChild } from 'preact';
import type { ChangeKind } from '../../../shared/contract/change.ts';
import { type Caution, cautionTexts, changeLabel } from '../../../state-machines/triage/change-catalogue.ts';
import { cautionsInGerman, changesInGerman, menuInGerman } from './changes-de.ts';
import { language } from './language.ts';
import { inWords } from './sentence.tsx';

// The catalogue of changes speaks English; what it says of a change is said in German here, kind by kind.

const isGerman = (): boolean => language.value === 'de';
const germanOf = (kind: string) =>
  kind === 'menu' ? menuInGerman : (changesInGerman as Partial<Record<string, typeof menuInGerman>>)[kind];

export const changeWords = (kind: ChangeKind): string =>
  isGerman() ? changesInGerman[kind].label : changeLabel(kind);

/** @param text the catalogue's own, for English and for kinds that have no German yet */
export const instructionWords = (kind: string, text: string): ComponentChild =>
  (isGerman() ? germanOf(kind)?.instructions : undefined) ?? inWords(text);
export const afterwardsWords = (kind: string, text: string): ComponentChild =>
  (isGerman() ? germanOf(kind)?.afterwards : undefined) ?? inWords(text);

/** @param text the catalogue's own, or another one's of shared code */
export function cautionWords(text: string): ComponentChild {
  if (!isGerman()) return text;
  const known = (Object.keys(cautionTexts) as Caution[]).find((caution) => cautionTexts[caution] === text);
  return known === undefined ? inWords(text) : cautionsInGerman[known];
}
