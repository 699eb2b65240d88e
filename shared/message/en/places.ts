import type { placeCodes } from '../codes/places.ts';
import type { Sentences } from '../sentences.ts';

export const placesEn: Sentences<typeof placeCodes> = {
  thePlace: ({ place }, say) => say.place(place),
};
