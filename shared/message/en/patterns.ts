import type { patternCodes } from '../codes/patterns.ts';
import type { Sentences } from '../sentences.ts';

export const patternsEn: Sentences<typeof patternCodes> = {
  comesAlways: () => 'It is always there',
  comesOnTrigger: ({ trigger }, say) => `It comes ${say.term('patternTrigger', trigger)}`,
  comesAtRandom: () => 'It comes at random',
  comesRarely: () => 'It comes at random, and rarely',
  comesInBursts: () => 'It comes in bursts',
  comesOnceWarm: ({ after }, say) =>
    after === null
      ? 'It comes only after warming up'
      : `It comes only after ${say.minutesNeeded(after)} of warming up`,
  patternNotKnown: () => 'How it comes is not known',
  showsOnlyWithOne: ({ kind }, say) => `It shows only with one ${say.term('onlyWith', kind)}`,
  showsOnlyWith: ({ kind, what }, say) =>
    `It shows only with the ${say.term('onlyWith', kind)} ${say.text(what)}`,
};
