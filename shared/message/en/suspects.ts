import type { suspectCodes } from '../codes/suspects.ts';
import type { Sentences } from '../sentences.ts';

export const suspectsEn: Sentences<typeof suspectCodes> = {
  suspect: ({ place }, say) => say.place(place),

  tooLittleMargin: () => 'too little margin for the data rate',
  looseContact: () => 'a loose or intermittent contact',
  couplerAtFault: () => 'a coupler, wall plate or adapter in its way',
  laidWrongWayRound: () => 'laid the wrong way round',
  tooLittleLinkPower: () => 'too little power for its electronics',
  portModeAtFault: () => 'the mode a port is set to',
  edidHandlingAtFault: () => 'how it handles the EDID',
  contentProtectionAtFault: () => 'content protection',
  firmwareAtFault: () => 'its firmware',
  powerOrHeatAtFault: () => 'its power supply or heat',
  processingAtFault: () => 'its picture processing',
  settingAtFault: () => 'how it is set',
  latchedUntilRestart: () => 'a state in which it hangs until it is restarted',
  controlBusAtFault: () => 'what the devices tell each other over the control bus',
  wakeOrderAtFault: () => 'the order in which the devices wake',
  controlSystemAtFault: () => 'what the control system tells the devices to do',
  disturbedFromOutside: () => 'something nearby that disturbs it',
  earthLoopAtFault: () => 'an earth loop',
  fiveVoltStartAtFault: () => 'the start-up of its 5 V line',
  certainContentAtFault: () => 'what it puts out with certain content',
  notInModel: () => 'something that is not in the model',

  onTheWayOrBeside: () => 'Lies on the way of the picture, or beside it',
  knownOfCable: () => 'What is known of the cable',
  auditSays: ({ finding }, say) => `Audit: ${say.message(finding)}`,
  changedBefore: ({ what }, say) => `What changed: ${say.term('whatChanged', what)}`,
  workedBefore: () => 'It worked before',
  neverWorked: () => 'It never worked',
  symptomIs: ({ symptom }, say) => `Symptom: ${say.term('symptom', symptom)}`,
  whichSourcesShowIt: () => 'Which sources show it',
  showsWithAnyContent: () => 'It shows with any content',
  showsAboveSomeFormat: () => 'It shows only above a certain format',
  showsWithProtectedContent: () => 'It shows only with protected content',
  comesAtAnyTime: () => 'It comes at any time',
  comesAtSwitching: () => 'It comes when something is switched or started',
  comesWhenWarm: () => 'It comes only after warming up',

  enteredLateCounts: ({ said, weight }, say) =>
    `${say.message(said)} (entered afterwards: counts ${say.percent(weight)})`,
  earlierRoundCounts: ({ said, weight }, say) =>
    `${say.message(said)} (in an earlier round: counts ${say.percent(weight)})`,
  perhapsTwoCounts: ({ said, weight }, say) =>
    `${say.message(said)} (with perhaps two faults there: counts ${say.percent(weight)})`,
  menuStayedAt: ({ place }, say) => `The menu of ${say.place(place)} was not hit when the fault came`,
  menuVanishedAt: ({ place }, say) => `The menu of ${say.place(place)} was hit too when the fault came`,
  edidReadFailedAt: ({ place }, say) => `An EDID read failed at ${say.place(place)}`,
  edidDiffersAt: ({ place }, say) => `The EDID at ${say.place(place)} differs from what the display says`,
  authenticationFailedAt: ({ place }, say) =>
    `Content-protection authentication failed at ${say.place(place)}`,
  linkFellBackAt: ({ place }, say) => `Link training fell back to a lower rate at ${say.place(place)}`,
  hotPlugDroppedAt: ({ place }, say) => `Hot plug dropped at ${say.place(place)}`,
  syncLostAt: ({ place }, say) => `Sync was lost at ${say.place(place)}`,
  restartLoggedAt: ({ place }, say) => `A restart was logged at ${say.place(place)}`,
  formatChangedAt: ({ place }, say) => `The format changed by itself at ${say.place(place)}`,
  changeCleared: ({ change, place }, say) =>
    `${say.start(say.change(change))}: ${say.place(place)} – the fault was gone`,
  changeDidNotClear: ({ change, place }, say) =>
    `${say.start(say.change(change))}: ${say.place(place)} – the fault was still there`,
  changeWatched: ({ change, place, seen }, say) =>
    `${say.start(say.change(change))}: ${say.place(place)} – ${say.message(seen)}`,
  changePutBackAndWatched: ({ change, place, seen }, say) =>
    `${say.start(say.change(change))}: ${say.place(place)}, put back – ${say.message(seen)}`,
  notSeenInMinutes: ({ minutes }, say) => `nothing in ${say.minutesWatched(minutes)}`,
  notThereAtLook: ({ looks }, say) => `not there at ${say.plural(looks, 'a look', `${looks} looks`)}`,
  thereAtLook: ({ looks }, say) => `there at ${say.plural(looks, 'a look', `${looks} looks`)}`,
  notSeenInTries: ({ tries }, say) => `nothing in ${tries} ${say.plural(tries, 'try', 'tries')}`,
  seenInMinutes: ({ seen, minutes }, say) => `seen ${say.times(seen)} in ${say.minutesWatched(minutes)}`,
  seenInTries: ({ seen, tries }, say) =>
    `seen ${say.times(seen)} in ${tries} ${say.plural(tries, 'try', 'tries')}`,
};
