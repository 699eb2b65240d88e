import type { codes } from '../../shared/message/codes/index.ts';
import { german } from '../../shared/message/de/index.ts';
import type { Sentences } from '../../shared/message/index.ts';

// A compile test, run by `npm run check:types`: a code without German, one too many, and a sentence that asks for a
// value which its code does not hold, are type errors. Where one of them is not, the directive above it is the error.
const { asWritten, ...others } = german.sentences;

// @ts-expect-error a code without German
export const lacking: Sentences<typeof codes> = others;

export const tooMany: Sentences<typeof codes> = {
  ...others,
  asWritten,
  // @ts-expect-error no such code
  noSuchCode: () => '',
};

export const wrongValue: Sentences<typeof codes> = {
  ...others,
  // @ts-expect-error the value is called `sentence`
  asWritten: ({ sentense }, say) => say.text(sentense),
};
