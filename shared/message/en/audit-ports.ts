import type { auditPortCodes } from '../codes/audit-ports.ts';
import type { Sentences } from '../sentences.ts';

export const auditPortsEn: Sentences<typeof auditPortCodes> = {
  portSetAboveHighest: ({ port, set, highest }, say) =>
    `${say.start(say.place(port))} is noted as set to ${say.mode(set)}, more than its highest mode, ${say.mode(highest)}.`,
  lookUpPortModes: () => 'Look at both in the menu and the manual, and correct the record.',
  portSetTooLow: ({ port, set, needed }, say) =>
    `${say.start(say.place(port))} is set to ${say.mode(set)}, but both ends of this link pass ${say.gbps(needed)}.`,
  portSetBelowNeed: ({ port, set, needed }, say) =>
    `${say.start(say.place(port))} is set to ${say.mode(set)}, where ${say.gbps(needed)} is asked of it and both ends of this link could pass it.`,
  setPortMode: ({ needed }, say) =>
    `Note the setting as found, then set the port to the mode that passes ${say.gbps(needed)}.`,
  portOfLowerRate: ({ port, passes, better }, say) =>
    `${say.start(say.place(port))} passes ${say.gbps(passes)} at most; ${say.and(better.map(say.label))} of the same device ${say.plural(better.length, 'passes', 'pass')} more.`,
  movePlug: ({ to }, say) => `Move the plug to ${say.or(to.map(say.label))}.`,
  swapPlugs: ({ with: others }, say) =>
    `Swap it with the plug in ${say.or(others.map(say.label))}, which needs less.`,
  decideWhichPlugGoesFirst: () =>
    'The better ones are taken by links that need them too: decide which goes first.',
  portWithoutProtection: ({ port, better }, say) =>
    `${say.start(say.place(port))} does content protection not at all; free on the same device with 2.2 or newer: ${say.and(better.map(say.label))}.`,
  portOfOlderProtection: ({ port, version, better }, say) =>
    `${say.start(say.place(port))} does content protection ${version} only; free on the same device with 2.2 or newer: ${say.and(better.map(say.label))}.`,
  outputForSound: ({ output }, say) =>
    `The way to a display leaves ${say.place(output)}; such outputs usually carry sound only.`,
  outputForAnotherZone: ({ output }, say) =>
    `The way to a display leaves ${say.place(output)}; outputs for another zone often pass less than the main one.`,
  movePlugOrLookUp: ({ to }, say) =>
    `Move the plug to ${say.or(to.map(say.label))}, or look up what this output does.`,
  lookUpOutput: () => 'Look up in the manual what this output does.',
};
