import type { patternCodes } from '../codes/patterns.ts';
import type { Sentences } from '../sentences.ts';

export const patternsDe: Sentences<typeof patternCodes> = {
  comesAlways: () => 'Er ist immer da',
  comesOnTrigger: ({ trigger }, say) => `Er kommt ${say.term('patternTrigger', trigger)}`,
  comesAtRandom: () => 'Er kommt zufällig',
  comesRarely: () => 'Er kommt zufällig und selten',
  comesInBursts: () => 'Er kommt in Schüben',
  comesOnceWarm: ({ after }, say) =>
    after === null
      ? 'Er kommt erst nach dem Warmwerden'
      : `Er kommt erst nach ${say.minutesNeeded(after)} Warmlaufen`,
  patternNotKnown: () => 'Wie er kommt, ist nicht bekannt',
  showsOnlyWithOne: ({ kind }, say) =>
    `Er zeigt sich nur mit ${kind === 'title' ? 'einem einzigen' : 'einer einzigen'} ${say.term('onlyWith', kind)}`,
  showsOnlyWith: ({ kind, what }, say) =>
    `Er zeigt sich nur mit ${kind === 'title' ? 'dem' : 'der'} ${say.term('onlyWith', kind)} ${say.text(what)}`,
};
