import type { writtenCodes } from '../codes/written.ts';
import type { Sentences } from '../sentences.ts';

export const writtenEn: Sentences<typeof writtenCodes> = {
  asWritten: ({ sentence }, say) => say.text(sentence),
  erased: ({ at }, say) => `[text erased ${say.moment(at)}]`,
  erasedBy: ({ at, by }, say) => `[text erased ${say.moment(at)} by ${say.name(by)}]`,
  unknownMessage: () => 'A newer version of the program says something here that this one has no words for.',
};
