import type { ChangeKind } from '../../contract/change.ts';
import type { changeCodes, needCodes } from '../codes/changes.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';
import type { ChangeWords } from './change-words.ts';
import { changesToChains } from './changes-to-chains.ts';
import { changesToDevices } from './changes-to-devices.ts';
import { changesOfPower } from './changes-to-devices-power.ts';
import { changesOfSettings } from './changes-to-devices-settings.ts';
import { changesToLinks } from './changes-to-links.ts';
import { changesToPlaces, wordsOfOwnKind } from './changes-to-places.ts';
import { changesToPorts } from './changes-to-ports.ts';

const words: { readonly [Kind in ChangeKind]: ChangeWords } = {
  ...changesToLinks,
  ...changesToPorts,
  ...changesToDevices,
  ...changesOfSettings,
  ...changesOfPower,
  ...changesToChains,
  ...changesToPlaces,
};

const wordsOf = (change: Kinds['changeKind']): ChangeWords =>
  typeof change === 'string' ? words[change] : wordsOfOwnKind(change.own);

const verdicts = {
  cleared: 'cleared the fault',
  persists: 'did not clear the fault',
  inconclusive: 'says nothing yet',
};
const named = (change: Kinds['changeKind'], say: Say): string => `‘${say.start(say.change(change))}’`;

export const changesEn: Sentences<typeof changeCodes> = {
  changeName: ({ change }) => wordsOf(change).label,
  changeAt: ({ change, place }, say) => `${say.start(say.change(change))}: ${say.place(place)}`,
  changeOrder: ({ change, place }, say) => wordsOf(change).order(say.place(place)),
  playBroughtSource: ({ place }, say) => `Play a brought source in place of ${say.place(place)}`,
  changeInstructions: ({ change }) => wordsOf(change).instructions,
  changeAfterwards: ({ change }) => wordsOf(change).afterwards,
  changeDeclared: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)}: ${wordsOf(change).instructions}`,
  changeJudged: ({ change, place, verdict }, say) =>
    `${named(change, say)}, ${say.place(place)} ${verdicts[verdict]}. ${wordsOf(change).afterwards}`,
  changeStays: ({ change, place, verdict }, say) =>
    `${named(change, say)}, ${say.place(place)} ${verdicts[verdict]}. It is right as it is now, whatever the retest says: keep it and go on.`,
  changeStillFails: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place and the fault still comes: end the watch and judge.`,
  changeQuietLongEnough: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place and it was quiet long enough: end the watch and judge.`,
  changeWatchMinutes: ({ change, place, minutes }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place. Watch: ${say.minutesNeeded(minutes)} without the fault to call it cleared.`,
  changeWatchTries: ({ change, place, tries }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place. Watch: ${tries} ${say.plural(tries, 'try', 'tries')} in a row without the fault to call it cleared.`,
  changeLook: ({ change, place, looks }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place. ${say.plural(looks, 'Look once: is the fault there?', `Look ${looks} times: is the fault there?`)}`,
  changeWatch: ({ change, place, how }, say) =>
    `${named(change, say)}, ${say.place(place)} is in place. Watch: ${say.message(how)}`,
  changeMayBringItOn: ({ change, place, minutes }, say) =>
    `${named(change, say)}, ${say.place(place)} may bring the fault on. Watch for ${say.minutesNeeded(minutes)}, and tell whether it comes.`,
  changeBroughtNothingOn: ({ change, place }, say) =>
    `${named(change, say)}, ${say.place(place)} brought nothing on: judge it and go on.`,
  changeFaultIsBack: ({ change, place }, say) =>
    `With everything as it was, the fault is back: ${named(change, say)} at ${say.place(place)} is what takes it away.`,
  watchForNothing: () => 'What this watch was begun for has been decided otherwise meanwhile. End it.',
  changeWaitForReturn: ({ change, place }, say) =>
    `${named(change, say)} at ${say.place(place)} cleared it, and everything is as it was. Watch until the fault returns. Only then is it shown.`,
  changeWaitForReturnEvery: ({ change, place, everyMin }, say) =>
    `${named(change, say)} at ${say.place(place)} cleared it, and everything is as it was. Watch until the fault returns: it came every ${say.minutesNeeded(everyMin)} before. Only then is it shown.`,
  changeDidNotReturn: ({ change, place }, say) =>
    `${named(change, say)} at ${say.place(place)} cleared it, and the fault has not returned without it, though it had the time. Handling alone may have taken it away: name it and say so, or test on.`,
  cureKeptNameIt: ({ change, place }, say) =>
    `${named(change, say)} at ${say.place(place)} took the fault away and is kept: there is nothing left to test. Name what it was, then settle on the remedy.`,
  cureKeptShowsNothing: ({ change, place }, say) =>
    `${named(change, say)} at ${say.place(place)} took the fault away and stays, but it doesn’t show which part it was. Hand the case over with what is known, or wait and see whether the fault comes back.`,
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
  needCableInOnePiece: () => 'a cable in one piece, long enough from socket to socket',
  needOtherSupply: () =>
    'a supply that the maker allows, with the voltage, polarity and current printed on the device',
  needOutletStrip: () => 'an earthed outlet strip that carries the load of all',
  needCableAsLong: ({ lengthM }, say) => `about ${say.metres(lengthM)}, as long as the one that is there`,
  needContentProtection: ({ version }) => `content protection ${version} on the other display`,
};
