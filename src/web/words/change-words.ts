import type { ChangeKind } from '../../../shared/contract/change.ts';
import { changeLabel } from '../../../state-machines/triage/changes/catalogue.ts';
import { changesInGerman } from './changes-de.ts';
import { language } from './language.ts';

/** What a kind of change is called, in the language of the screens. */
export const changeWords = (kind: ChangeKind): string =>
  language.value === 'de' ? changesInGerman[kind].label : changeLabel(kind);
