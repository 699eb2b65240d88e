import type { retestCodes } from '../codes/retest.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';

const shown = (value: string | null, say: Say): string => (value === null ? 'nothing' : say.quoted(value));
const otherTrigger =
  'The retest used another trigger than the watch before the change, so the two can’t be compared.';
const otherMode = 'One was watched over time and the other by a trigger, so the two can’t be compared.';
const notComparable = 'Whether it comes less often can’t be said.';
const repeat = 'Repeat the retest the way the fault was reproduced.';
const inBursts = (chance: string): string =>
  `Before the change the fault came in bursts (independent occurrences lie this unevenly with ${chance}), so the usual length of the retest is too short.`;

export const retestEn: Sentences<typeof retestCodes> = {
  nothingWatchedYet: () => 'Nothing was watched yet.',
  cannotBeJudged: () => 'This can’t be judged.',
  restsOnReports: () =>
    'This rests on what was reported or logged over days; nobody watched, and it counts for less.',
  cameWhileUnattended: ({ days, reported, logged }, say) =>
    `While nobody watched, over ${say.number(days, 1)} days, the fault came: ${reported} reported, ${logged} in logs.`,
  nobodyCouldReport: () =>
    'No diary was open in those days and no log was read, so that their quiet says nothing.',
  quietDaysSayNothing: ({ days }, say) =>
    `Quiet over ${say.number(days, 1)} days; how often it came before is not known, so that this says nothing yet.`,
  quietDays: ({ days, chance }, say) =>
    `Quiet over ${say.number(days, 1)} days in which it could be reported. If nothing had changed, that would happen by chance with ${say.percent(chance)}.`,
  firmwareMoved: ({ device, before, after }, say) =>
    `At ${say.place(device)}, the firmware was ${shown(before, say)} and ${after === null ? 'could not be read afterwards' : `is ${shown(after, say)}`}: nothing can be put down to the change.`,
  firmwareUnread: ({ devices }, say) =>
    `The firmware of ${say.and(devices.map((device) => say.place(device)))} was not read when the change was left in: an update meanwhile would not be seen.`,
  otherTriggerStillThere: () => `${otherTrigger} ${notComparable}`,
  otherTriggerRepeat: () => `${otherTrigger} ${repeat}`,
  otherModeStillThere: () => `${otherMode} ${notComparable}`,
  otherModeRepeat: () => `${otherMode} ${repeat}`,
  seenDuringRetest: ({ occurrences }, say) =>
    `The fault came ${say.times(occurrences)} during the retest: it is still there.`,
  seenWithChangeInPlace: ({ occurrences }, say) =>
    `The fault came ${say.times(occurrences)} during the retest: it is there with the change in place.`,
  baselineRateUnknown: () => 'It was not seen before the change, so how often it came then is not known.',
  notSeenBeforeChange: () =>
    'The fault was not seen before the change, so not seeing it now says nothing. Reproduce it first.',
  noQuietSettles: () => 'No length of quiet watching would settle this.',
  noTriesSettle: () => 'No number of tries would settle this.',
  quietMinutes: ({ watched, before, watchedBefore }, say) =>
    `${say.minutesWatched(watched)} without the fault, ${say.times(before)} in ${say.minutesWatched(watchedBefore)} before.`,
  quietTries: ({ tries, failedBefore, triesBefore }) =>
    `None of ${tries} tries failed, ${failedBefore} of ${triesBefore} before.`,
  noLooksSettle: () => 'No number of looks would settle this.',
  goodLooks: ({ looks, badBefore, looksBefore }, say) =>
    `Not there at ${say.plural(looks, 'one look', `${looks} looks`)}; before, at ${badBefore} of ${looksBefore}.`,
  lookMore: ({ remaining, total }, say) =>
    `Look ${say.plural(remaining, 'once more', `${remaining} more times`)} (${total} good looks in a row in all).`,
  stillThereAtLook: ({ bad, looks, badBefore, looksBefore }, say) =>
    `The fault is still there: at ${bad} of ${looks} ${say.plural(looks, 'look', 'looks')} with the change, ${badBefore} of ${looksBefore} before.`,
  sureSoFarLook: ({ sure, remaining }, say) =>
    `${say.percent(sure)} sure by now that the change made a difference; ${say.plural(remaining, 'one more good look', `${remaining} more good looks in a row`)} to call it cleared.`,
  needsTrigger: ({ trigger }, say) =>
    `The fault comes ${say.term('patternTrigger', trigger)}, so waiting without the fault says nothing: try just that, and count the tries.`,
  otherContentPlayed: () =>
    'Something else was playing than what the fault shows with, so its staying away says nothing.',
  contentNotSaid: () =>
    'Nobody said whether that was playing which the fault shows with, so its staying away says nothing.',
  timeOnNotSaid: () =>
    'Nobody said how long the devices had been on, and the fault comes only when they are warm: its staying away says nothing.',
  notWarmYet: ({ after }, say) =>
    `The fault comes only after ${say.minutesNeeded(after)}, and it was watched before that: its staying away says nothing.`,
  onlyWarmMinutes: ({ after }, say) =>
    `Only minutes from ${say.minutesNeeded(after)} after switching on are counted.`,
  burstsCounted: ({ occurrences, bursts }, say) =>
    `It came ${say.times(occurrences)} in ${bursts} ${say.plural(bursts, 'burst', 'bursts')}; each burst counts once, since what comes in one comes together.`,
  cameTogether: ({ occurrences, independent }, say) =>
    `It came ${say.times(occurrences)} before, some of them close together: they count as about ${independent} that came by themselves, so the retest takes longer.`,
  watchMore: ({ remaining, total }, say) =>
    `Watch ${say.minutesNeeded(remaining)} more without the fault (${say.minutesNeeded(total)} in all).`,
  tryMore: ({ remaining, total }, say) =>
    `Try ${say.plural(remaining, 'once more', `${remaining} more times`)} without a failure (${total} in a row in all).`,
  chanceBelowLimit: ({ chance, limit }, say) =>
    `If nothing had changed, that would happen by chance with ${say.percent(chance)}; the limit is ${say.percent(limit)}.`,
  chanceAboveLimit: ({ chance, limit }, say) =>
    `If nothing had changed, that would happen by chance with ${say.percent(chance)}, more than the limit of ${say.percent(limit)}.`,
  stillThereInTime: ({ now, watched, before, watchedBefore }, say) =>
    `The fault is still there: ${say.times(now)} in ${say.minutesWatched(watched)} with the change, ${say.times(before)} in ${say.minutesWatched(watchedBefore)} before.`,
  stillThereInTries: ({ failed, tries, failedBefore, triesBefore }) =>
    `The fault is still there: ${failed} of ${tries} tries failed with the change, ${failedBefore} of ${triesBefore} before.`,
  comesLessOften: ({ chance }, say) =>
    `It clearly comes less often (by chance alone with ${say.percent(chance)}), but less often is not cleared.`,
  comesMoreOften: ({ chance }, say) =>
    `It clearly comes more often than before (by chance alone with ${say.percent(chance)}).`,
  rateNotComparable: () => 'Whether it comes less often can’t be told from this.',
  moreOftenWithChange: () =>
    'The fault comes more often with the change in place: check that the change itself was made properly.',
  cameInBursts: ({ chance }, say) => inBursts(say.percent(chance)),
  cameInBurstsWatch: ({ chance, total }, say) =>
    `${inBursts(say.percent(chance))} To allow for that, watch ${say.minutesNeeded(total)} in all.`,
  triesBeforeNotWhole: () => 'The tries before the change are no whole numbers.',
  triesOfRetestNotWhole: () => 'The tries of the retest are no whole numbers.',
  moreFailedThanTriedBefore: () => 'More tries failed than were made, in the watch before the change.',
  moreFailedThanTriedInRetest: () => 'More tries failed than were made, in the retest.',
  occurrencesBeforeNotWhole: () => 'The occurrences in the watch before the change are no whole number.',
  occurrencesOfRetestNotWhole: () => 'The occurrences in the retest are no whole number.',
  lengthBeforeUnknown: () => 'The length of the watch before the change is not known.',
  lengthOfRetestUnknown: () => 'The length of the retest is not known.',
  watchBeforeHasNoLength: () => 'The watch before the change has no length.',
  retestHasNoLength: () => 'The retest has no length.',
  sureEnough: ({ sure }, say) =>
    `${say.percent(sure)} sure that the change made a difference: enough to call it cleared.`,
  sureSoFarWatch: ({ sure, remaining }, say) =>
    `${say.percent(sure)} sure by now that the change made a difference; ${say.minutesNeeded(remaining)} more without the fault to call it cleared.`,
  sureSoFarTry: ({ sure, remaining }, say) =>
    `${say.percent(sure)} sure by now that the change made a difference; ${say.plural(remaining, 'one more try', `${remaining} more tries in a row`)} without a failure to call it cleared.`,
  settingNotDeclared: ({ device, setting, before, after }, say) =>
    `At ${say.place(device)}, ${say.quoted(setting)} went from ${shown(before, say)} to ${shown(after, say)} without being declared.`,
  settingNotAsDeclared: ({ device, setting, declared, before, after }, say) =>
    `At ${say.place(device)}, ${say.quoted(setting)} was declared to become ${say.quoted(declared)}; it was ${shown(before, say)} and is ${shown(after, say)}.`,
};
