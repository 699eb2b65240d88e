import { erasedText, withErasuresApart } from '../../../shared/contract/erased-text.ts';
import { replacedIn } from '../../../shared/contract/json-pointer.ts';
import { message } from '../../../shared/message/index.ts';
import { type Refused, refused } from '../../http/index.ts';

const refusal = refused('invalid-input', message('erasureForged'));

/** Null unless something that is sent says that it was erased; what says so where it stands may come back, as in an update. */
export function refusalOfForgedErasure(sent: unknown, where: unknown): Refused | null {
  const there = JSON.stringify(where);
  let isForged = false;
  replacedIn(sent, (value) => {
    if (typeof value === 'string') {
      isForged ||= withErasuresApart(value).some(
        (piece) => typeof piece !== 'string' && !there.includes(erasedText(piece)),
      );
    }
    return undefined;
  });
  return isForged ? refusal : null;
}
