import type { ChangeKind } from '../../../shared/contract/change.ts';
import { message } from '../../../shared/message/index.ts';
import { said } from './sentence.tsx';

/** What a kind of change is called, in the language of the screens. */
export const changeWords = (kind: ChangeKind): string => said(message('changeName', { change: kind })).text;
