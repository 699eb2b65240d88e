import type { changePlacesCodes } from '../codes/change-places.ts';
import type { Sentences } from '../sentences.ts';

export const changePlacesEn: Sentences<typeof changePlacesCodes> = {
  noSideForChange: () => 'No side is known yet, so it can’t be said what is worth changing.',
  keptAlready: () => 'That was done and kept: it is part of the chain now.',
  nothingUnderThatId: () =>
    'The chain as found has nothing under that id. If it is there, take back the sides, correct the chain’s description and record it as found again.',
  onTheOtherSide: () =>
    'It can’t be at fault any more: it lies on the other side. If that side is wrong, go back to finding it and take it back.',
  cableInWall: () => 'It lies in the wall: bridge it with a temporary cable instead.',
  cableShortAndFree: () => 'It is short and lies free: replace it instead.',
  noParallelBranch: () => 'There is no parallel branch beside it.',
  watchedPictureRunsThrough: () => 'The picture that is watched comes through it.',
  portModeNotSet: () => 'Its mode isn’t set: it is on automatic or can’t be set.',
  portModeHighest: () => 'It is set to the highest mode it has.',
  nothingPluggedIn: () => 'Nothing is plugged into it.',
  noProcessorFollows: () => 'No processor follows it.',
  straightIntoProcessor: () => 'It goes straight into the processor as it is.',
  noSignalInAndOut: () => 'It has no signal both in and out.',
  nothingToSwitchOff: () => 'It neither processes the picture nor manages EDID as it is set.',
  noDisplayFollows: () => 'No display follows it.',
  noEarlierSettings: () => 'No earlier settings of it are known.',
  doneToDevice: ({ change }, say) => `‘${say.change(change)}’ is done to a device.`,
  doneToPort: ({ change }, say) => `‘${say.change(change)}’ is done to a port.`,
  doneToLink: ({ change }, say) => `‘${say.change(change)}’ is done to a cable.`,
  doneToChain: ({ change }, say) => `‘${say.change(change)}’ is done to the chain as a whole.`,
  describeTheChange: () => 'Describe what is changed: nobody else could know.',
  ownKindUnknown: () => 'Your organisation has no such kind of change, or no longer has it.',
  opticalNotFlexed: () => 'It is an optical cable: flexing can break it.',
  cableNotInReach: () => 'It doesn’t lie free, so it can’t be flexed by hand from the floor.',
  doneAtRoles: ({ roles, role }, say) =>
    `That is done at a ${say.or(roles.map((each) => say.term('role', each)))}, not at a ${say.term('role', role)}.`,
  nothingOnInput: () => 'Nothing is plugged into an input of it.',
  nothingOnOutput: () => 'Nothing is plugged into an output of it.',
  inputLimitedAlready: ({ rate }, say) => `Its input passes no more than ${say.gbps(rate)} as it is.`,
  outputLimitedAlready: ({ rate }, say) => `Its output passes no more than ${say.gbps(rate)} as it is.`,
  noOtherInput: () => 'It has no other free input.',
  noOtherOutput: () => 'It has no other free output.',
  cannotBypass: ({ role }, say) => `A ${say.term('role', role)} can’t be bypassed.`,
  joinedWithin: ({ length }, say) =>
    `It is joined to the display by no more than ${say.metres(length)} as it is.`,
  untriedFirst: ({ change, place }, say) =>
    `An update can’t be undone, so it comes last: ‘${say.change(change)}’ at ${say.place(place)} is still untried.`,
};
