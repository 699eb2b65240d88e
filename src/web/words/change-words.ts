import { message } from '../../../shared/message/index.ts';
import { namedChange } from '../../../shared/message/named-change.ts';
import { said } from './sentence.tsx';

/** What a change is called, in the language of the screens; an organisation's own kind by the name it has there. */
export const changeWords = (change: Parameters<typeof namedChange>[0]): string =>
  said(message('changeName', { change: namedChange(change) })).text;
