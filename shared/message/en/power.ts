import type { powerCodes } from '../codes/power.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

const aCable: Record<Kinds['construction'], string> = {
  passiveCopper: 'a passive copper cable',
  activeCopper: 'an active copper cable',
  activeOptical: 'an active optical cable',
  twistedPairExtender: 'a twisted-pair extender',
};

export const powerEn: Sentences<typeof powerCodes> = {
  linkUnderfed: ({ cable, budget }, say) =>
    `The 5 V line of ${say.place(cable)} is too weak. ${say.message(budget)}`,
  fiveVoltBudget: ({ supply, sink, cable, balance }, say) =>
    `${say.message(supply)}, ${say.message(sink)}, ${say.message(cable)}: ${say.message(balance)}.`,
  fiveVoltOpticalOnSource: ({ budget, offered }, say) =>
    `${say.message(budget)} Start-up is when it shows: no picture, or one that drops out. Power the cable at an end that takes power, or use passive copper from the source to the next device; a source that offers power for cables supplies ${say.number(offered)} mA.`,
  fiveVoltFallsShort: ({ budget, cable }, say) =>
    `${say.message(budget)} Power ${say.place(cable)} at an end that takes power, or measure what the source supplies.`,
  suppliesAtLeast: ({ source, supply }, say) =>
    `${say.device(source)} has to supply ${say.number(supply)} mA at 5 V and no more`,
  supplies: ({ source, supply }, say) => `${say.device(source)} supplies ${say.number(supply)} mA at 5 V`,
  mayTake: ({ sink, draw }, say) => `${say.device(sink)} may take up to ${say.number(draw)}`,
  takes: ({ sink, draw }, say) => `${say.device(sink)} takes ${say.number(draw)}`,
  cableTakes: ({ draw }, say) => `the cable takes ${say.number(draw)}`,
  cableTakesAbout: ({ construction, draw }, say) =>
    `${aCable[construction]} takes about ${say.number(draw)} (assumed)`,
  cableHasOwnSupply: () => 'the cable has a supply of its own',
  cableTakesNothing: () => 'the cable takes nothing',
  currentToSpare: ({ left }, say) => `${say.number(left)} mA to spare`,
  currentShort: ({ short }, say) => `${say.number(short)} mA short`,
  powerCable: () =>
    'Power the cable at the end its maker names, or put a switch with a supply of its own before it.',
};
