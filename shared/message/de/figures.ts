import type { figureCodes } from '../codes/figures.ts';
import type { Sentences } from '../sentences.ts';

export const figuresDe: Sentences<typeof figureCodes> = {
  noSuchFigure: () => 'Diesen Wert gibt es nicht.',
  chanceOutOfBounds: () => 'Eine Wahrscheinlichkeit liegt zwischen 0 und 1, beide ausgenommen.',
  minutesOutOfBounds: ({ most }, say) => `Minuten liegen zwischen 0 und ${say.number(most)}.`,
  doubtOutOfBounds: ({ most }, say) => `Ein Zweifel liegt zwischen 1 und ${say.number(most)}.`,
  weightOutOfBounds: ({ most }, say) => `Ein Gewicht oder Faktor liegt zwischen 0 und ${say.number(most)}.`,
};
