import type { figureCodes } from '../codes/figures.ts';
import type { Sentences } from '../sentences.ts';

export const figuresEn: Sentences<typeof figureCodes> = {
  noSuchFigure: () => 'There is no such figure.',
  chanceOutOfBounds: () => 'A chance lies between 0 and 1, both left out.',
  minutesOutOfBounds: ({ most }, say) => `Minutes lie between 0 and ${say.number(most)}.`,
  doubtOutOfBounds: ({ most }, say) => `A doubt lies between 1 and ${say.number(most)}.`,
  weightOutOfBounds: ({ most }, say) => `A weight or factor lies between 0 and ${say.number(most)}.`,
};
