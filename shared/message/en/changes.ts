import type { changeCodes, needCodes } from '../codes/changes.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

type Words = {
  /** What it is called, on screens and inside sentences. */
  label: string;
  /** What to do; the place's name goes in. */
  order: (place: string) => string;
  instructions: string;
  /** When it was judged. */
  afterwards: string;
};
const words: { readonly [Kind in Kinds['changeKind']]: Words } = {
  reseat: {
    label: 'Reseat both plugs',
    order: (place) => `Reseat the plugs of ${place}`,
    instructions:
      'Switch both devices to standby. Pull the plug at each end, look for bent contacts and dirt, and push it fully home. Touch no other cable.',
    afterwards: 'Nothing to put back.',
  },
  replaceCable: {
    label: 'Replace the cable',
    order: (place) => `Replace ${place}`,
    instructions:
      'Put a cable known to be good into the same two ports. A directional cable goes with its source end to the source; power it where its maker asks for that. Mark the old cable and keep it.',
    afterwards: 'Keep the new cable if the fault is gone; otherwise put the old one back.',
  },
  temporaryCable: {
    label: 'Lay a temporary cable across the floor',
    order: (place) => `Lay a temporary cable in place of ${place}`,
    instructions:
      'Lay a cable known to be good from port to port in the open, and leave the fixed cable where it is with both its plugs out.',
    afterwards: 'Take the temporary cable up and plug the fixed one back into the same two ports.',
  },
  otherSource: {
    label: 'Play another source in its place',
    order: (place) => `Play ${place} instead`,
    instructions:
      'Leave every cable as it is and play this source with content of the same kind and format as the one that shows the fault. Where it is the source that shows it itself, put one you brought in its place, into the same port.',
    afterwards:
      'Choose the usual source again; where one was brought, plug the old one back into the same port.',
  },
  sourceIntoProcessor: {
    label: 'Plug the source straight into the processor',
    order: (place) => `Plug straight into the processor: ${place}`,
    instructions:
      'Take everything between this source and the processor out of the way: one cable from the source to a processor input, and that input chosen. Sound may be missing meanwhile.',
    afterwards: 'Plug the source back where it was and choose the old input again.',
  },
  bypassDevice: {
    label: 'Bypass the device',
    order: (place) => `Bypass ${place}`,
    instructions:
      'Join what feeds the device straight to what follows it. Extenders come in pairs: take both ends out.',
    afterwards: 'Put the device back between the same two ports.',
  },
  unplugBranch: {
    label: 'Unplug the parallel branch',
    order: (place) => `Unplug the branch: ${place}`,
    instructions:
      'Pull the plug of this branch at the device that feeds it. A display in standby still takes part while it is plugged in.',
    afterwards: 'Plug the branch back into the same port.',
  },
  movePort: {
    label: 'Move the plug to another port',
    order: (place) => `Move to another port: ${place}`,
    instructions:
      'Move this plug to a free port of the same device, in the same direction and with the same abilities and settings, and choose that port.',
    afterwards: 'Leave it there if the fault is gone; otherwise move it back.',
  },
  raisePortMode: {
    label: 'Raise the port’s mode',
    order: (place) => `Raise the mode of ${place}`,
    instructions:
      'Set this port to the highest mode it has. Declare the setting, and read the settings out before and after.',
    afterwards: 'The highest mode may stay. If it must go back, set what it was before.',
  },
  disableProcessing: {
    label: 'Switch off processing and EDID management',
    order: (place) => `Switch off processing and EDID management of ${place}`,
    instructions:
      'Switch off scaling, conversion, picture processing and EDID management in this device, so that it passes on what it gets. Declare each setting, and read the settings out before and after.',
    afterwards: 'Leave it off if the fault is gone; otherwise set everything as it was.',
  },
  limitInputBandwidth: {
    label: 'Limit the advertised input bandwidth to 9 Gbit/s',
    order: (place) => `Limit to 9 Gbit/s the input of ${place}`,
    instructions:
      'Set the input’s advertised bandwidth to 9 Gbit/s, then restart this device and the source so that the source reads it anew. Declare the setting.',
    afterwards: 'Set it back to automatic, and restart both again.',
  },
  limitOutputBandwidth: {
    label: 'Limit the output bandwidth to 9 Gbit/s',
    order: (place) => `Limit to 9 Gbit/s the output of ${place}`,
    instructions:
      'Set this device’s output to 9 Gbit/s at most (a lower rate, 8 bit, or 4:2:0), so that the cable behind it carries less. Declare the setting.',
    afterwards: 'Set the output back to what it was, mostly automatic.',
  },
  reissueHotPlug: {
    label: 'Re-issue hot plug',
    order: (place) => `Re-issue hot plug at ${place}`,
    instructions:
      'Have this device signal hot plug to its source again, by its own menu or remote control and without touching a plug, and note what happens. This is information, never a repair.',
    afterwards: 'Nothing to put back: close it as put back.',
  },
  insertSyncSwitch: {
    label: 'Insert a switch that regenerates sync',
    order: (place) => `Insert a switch that regenerates sync into ${place}`,
    instructions:
      'Put the switch into this link, at the end nearer to the display, with its scaling and its own EDID off.',
    afterwards: 'It may stay if the fault is gone; otherwise take it out and join the link as it was.',
  },
  moveProcessorToDisplay: {
    label: 'Move the processor next to the display',
    order: (place) => `Move next to the display: ${place}`,
    instructions:
      'Put the processor beside the display and join them by the short passive cable. This is for finding the fault only.',
    afterwards: 'Bring the processor back to its place and join both links as they were.',
  },
  substituteDisplay: {
    label: 'Substitute the display',
    order: (place) => `Substitute ${place}`,
    instructions:
      'Plug the cable that feeds the display into another one. A display with other content protection would change two things at once.',
    afterwards: 'Plug the cable back into the display’s same port.',
  },
  restoreSettings: {
    label: 'Restore earlier settings',
    order: (place) => `Restore earlier settings of ${place}`,
    instructions:
      'Set this device as it was while everything worked. Declare each setting, and read the settings out before and after.',
    afterwards: 'The earlier settings may stay. If they must go back, set what was read out before.',
  },
  updateFirmware: {
    label: 'Update the firmware',
    order: (place) => `Update the firmware of ${place}`,
    instructions:
      'Write the settings down, update by the maker’s notes, then set what the update has reset. Read firmware level and settings out before and after.',
    afterwards: 'It can’t be undone: keep it, whatever the retest says.',
  },
};

const verdicts = {
  cleared: 'cleared the fault',
  persists: 'did not clear the fault',
  inconclusive: 'says nothing yet',
};
const named = (change: keyof typeof words, say: Say): string => `‘${say.start(say.change(change))}’`;

export const changesEn: Sentences<typeof changeCodes> = {
  changeName: ({ change }) => words[change].label,
  changeAt: ({ change, place }, say) => `${say.start(say.change(change))}: ${say.place(place)}`,
  changeOrder: ({ change, place }, say) => words[change].order(say.place(place)),
  playBroughtSource: ({ place }, say) => `Play a brought source in place of ${say.place(place)}`,
  changeInstructions: ({ change }) => words[change].instructions,
  changeAfterwards: ({ change }) => words[change].afterwards,
  changeDeclared: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}: ${words[change].instructions}`,
  changeJudged: ({ change, place, verdict }, say) =>
    `${named(change, say)}, ${say.place(place)} ${verdicts[verdict]}. ${words[change].afterwards}`,
  changeStillFails: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place and the fault still comes: judge it and put it back.`,
  changeQuietLongEnough: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place and it was quiet long enough: end the watch and judge.`,
  changeWatchMinutes: ({ change, place, minutes }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place. Watch: ${say.minutesNeeded(minutes)} without the fault to call it cleared.`,
  changeWatchTries: ({ change, place, tries }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place. Watch: ${tries} ${say.plural(tries, 'try', 'tries')} in a row without the fault to call it cleared.`,
  changeWatch: ({ change, place, how }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place. Watch: ${say.message(how)}`,
  changeFaultIsBack: ({ change, place }, say) =>
    `With everything as it was, the fault is back: ${named(change, say)} at ${say.place(place)} is what takes it away.`,
  changeWaitForReturn: ({ change, place }, say) =>
    `${named(change, say)} at ${say.place(place)} cleared it, and everything is as it was. Watch until the fault returns. Only then is it shown.`,
  changeWaitForReturnEvery: ({ change, place, everyMin }, say) =>
    `${named(change, say)} at ${say.place(place)} cleared it, and everything is as it was. Watch until the fault returns: it came every ${say.minutesNeeded(everyMin)} before. Only then is it shown.`,
};

export const needsEn: Sentences<typeof needCodes> = {
  needSureCable: () => 'a cable known to be good: certified, long enough, no longer than needed',
  needTapeOrCover: () => 'tape or a cable cover',
  needCouplerOrLongerCable: () => 'a coupler that passes the full rate, or a longer cable known to be good',
  needSyncSwitch: () => 'a switch that regenerates sync and passes the full rate',
  needShortCable: () => 'a short cable known to be good',
  needItsPowerSupply: () => 'its power supply',
  needShortPassiveCable: () => 'a passive cable of at most about 4 m (13 ft), known to be good',
  needLongInputCable: () => 'a long cable for the processor’s input',
  needMainsNearDisplay: () => 'mains near the display',
  needLikeDisplay: () => 'another display that does the same content protection and takes the same signal',
  needEarlierSettings: () => 'the earlier settings, written down or saved',
  needFirmwareFile: () => 'the firmware file and its maker’s notes',
  needTimeForUpdate: () => 'time: an interrupted update can spoil the device',
  needCableAsLong: ({ lengthM }, say) => `about ${say.metres(lengthM)}, as long as the one that is there`,
  needContentProtection: ({ version }) => `content protection ${version} on the other display`,
};
