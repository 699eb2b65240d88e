import type { ChangeKind } from '../../../shared/contract/change.ts';

import { terms } from './terms.ts';

/** What a kind of change is called, in the language of the screens. */
export const changeWords = (kind: ChangeKind): string => terms().changeKind[kind];
