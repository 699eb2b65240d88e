import type { refusalsCodes } from '../codes/refusals.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { NamedPlace } from '../values.ts';

const at = (place: NamedPlace | null, say: Say): string => (place === null ? '' : ` at ${say.place(place)}`);

export const refusalsEn: Sentences<typeof refusalsCodes> = {
  chainNotAsFound: () => 'A change is open: the chain is not as found.',
  sideRestsOnChain: () => 'A side was concluded on the chain as recorded: take that back first.',
  recordAsFoundFirst: () => 'Record the chain as found first.',
  triggerMissing: () => 'Say what makes the fault come: each try is one such switching.',
  menuDeviceMissing: () => 'Say which device’s menu is up.',
  noChangeInPlace: () => 'No change is in place.',
  retestJudgedAlready: () => 'The retest was judged: put the change back or keep it.',
  nothingToConfirm: () => 'There is nothing to confirm: no change that cleared the fault was put back.',
  noWatchRunning: () => 'No watch is running: start one first.',
  watchRunning: () => 'A watch is running: end it first.',
  menuAnswerMissing: () => 'Did the menu stay as it was, or was it hit too?',
  watchCountsTime: () => 'This watch counts time, not tries: start one with a trigger.',
  faultNotSeenYet: () => 'The fault was not seen yet: keep watching, or try another trigger.',
  occurrenceWithdrawnAlready: () => 'That occurrence was withdrawn already.',
  noOccurrenceToWithdraw: () => 'There is no occurrence to withdraw.',
  watchStillRunning: () => 'That watch is still running: record what you see.',
  triesJudgedWhenMade: () => 'In a watch by tries each try was judged when it was made.',
  watchOfEarlierRound: () => 'That watch belongs to an earlier round.',
  occurrenceRecordedAlready: () => 'That occurrence is recorded already.',
  contradictsSideThere: () => 'That contradicts the side concluded there: take the side back first.',
  needsEndedWatchAndLog: () => 'That takes a watch that has ended and a log.',
  closedReopenFirst: () => 'The ticket is closed: reopen it first.',
  cureIsKept: () =>
    'A change that cleared the fault was kept, so another one could show nothing. Name the culprit, or go back to finding the side and see the fault again.',
  noChangeDeclared: () => 'No change is declared.',
  noChangeOpen: () => 'No change is open.',
  changeMadeAlready: () => 'The change was made already: put it back or keep it.',
  watchWithChangeFirst: () => 'Watch with the change in place first, over time or by trying.',
  cannotBePutBack: () => 'That can’t be put back: keep it.',
  noSideYet: () => 'No side is known yet: watch with a device’s menu up, and conclude.',
  sideConcludedAlready: () => 'The side was concluded at this device already.',
  noSideConcluded: () => 'No side was concluded.',
  noSideAtDevice: () => 'No side was concluded at this device.',
  diagnosticMustGoBack: () => 'It is a diagnostic change: it has to be put back.',
  didNotClear: () => 'It did not clear the fault: put it back.',
  curedByWhatUnknown: () =>
    'More than what was declared differs, so it is not known what cleared the fault: put it back.',
  changeNotFinished: () => 'That change is not finished.',
  changeShowsNoCulprit: () => 'That change is information only: it shows no culprit.',
  changeNotRetested: () => 'That change was not retested.',
  retestNotAttributable: () =>
    'More than what was declared differed during that retest, so it can’t be put down to the change.',
  loggedAnsweredAlready: () => 'That was said already of what the log shows there.',
  placeNotInChain: () =>
    'The chain as found has no such place. If it is there, take back the sides, correct the chain’s description and record it as found again.',
  nothingClearedYet: () => 'No change has cleared the fault in a retest that counts.',
  changeNotInRound: () => 'There is no such change in this round.',
  watchNotAfterPutBack: () => 'That watch was not made after this change was put back.',
  faultDidNotReturn: () => 'The fault did not return in that watch: say why the confirmation is missing.',
  faultWasSeen: () => 'The fault was seen: go on and find the side.',
  remedyNeedsCulprit: () => 'A repair or a workaround needs a culprit; nothing was found yet.',
  faultWasFound: () => 'A culprit is named, so a fault was found: repair it or work around it.',
  acceptanceInFuture: () => 'The client’s acceptance is still to come by its time.',
  culpritIsNamed: () => 'A culprit is named.',
  noCulpritNamed: () => 'No culprit is named.',
  recordFaultFirst: () => 'Record the fault in a watch first.',
  nothingAsked: () => 'Second line waits for no answer.',
  requestAnsweredAlready: () => 'That request was answered already.',
  evidenceUnknown: () => 'The ticket has no such evidence.',
  ticketHasNoSuchWatch: () => 'The ticket has no watch under that id.',
  ticketHasNoSuchChange: () => 'The ticket has no change under that id.',
  evidenceWithdrawnAlready: () => 'That item was withdrawn already.',
  sayOneOfTwo: () =>
    'The fault still comes, but more rarely: it can stay as one of perhaps two faults, or be put back.',
  notOneOfTwoHere: () => 'The fault is gone with it: it stays as what put the fault right.',
  lateChangeInFuture: () => 'That lies in the future: enter when it was made.',
  undoneBeforeMade: () => 'It can’t have been undone before it was made: enter when it was undone.',
  lateDiagnosticStillThere: () =>
    'This has to be put back before the work goes on: put it back now, and enter it with the time at which it was put back.',
  lateChangeBesideAnother: ({ change, place }, say) =>
    `Another change was in place at that time: ${say.change(change)}${at(place, say)}. Two at once prove nothing: let the watches of that time not count, and write this one down as a note.`,
  clientChoosesFirst: () =>
    'Repairing on suspicion is the client’s choice: show the ways on, and write down what they chose first.',
  nothingToAskAfter: () => 'There is no repair to ask after.',
  picturesLeftOut: ({ count }, say) =>
    `${say.plural(count, 'A source on a display is', `${count} pairs of source and display are`)} without an answer. “Not checked” is one.`,
  ticketWaits: ({ what, until }, say) =>
    `The ticket waits until ${say.moment(until)} (${say.text(what)}): go on with the work first.`,
  waitIsOver: ({ moment }, say) => `${say.moment(moment)} is past already: name a later date.`,
  caseTakenAlready: () => 'You have taken this case already.',
  watchIdTaken: () => 'There is a watch under that id.',
  occurrenceIdTaken: () => 'There is an occurrence under that id.',
  changeIdTaken: () => 'There is a change under that id.',
  evidenceIdTaken: () => 'There is an item of evidence under that id.',
  requestIdTaken: () => 'There is a request under that id.',
  occurrenceUnknown: () => 'There is no occurrence under that id.',
  watchUnknown: () => 'There is no watch under that id.',
  watchVoidedAlready: () => 'That watch does not count any more.',
  diaryIdTaken: () => 'There is a diary with that id already.',
  diaryUnknown: () => 'The ticket has no such diary.',
  reportSentAlready: () => 'That report is there already.',
  reportUnknown: () => 'The ticket has no such report of the client.',
  reportWithdrawnAlready: () => 'That report does not count any more.',
  noReportToWithdraw: () => 'There is no report of the client that counts.',
  noSuchDiary: () => 'There is no such diary.',
  unattendedRuns: ({ until }, say) =>
    `A change was left in until ${say.moment(until)}. End that first: read the firmware again, and fetch the logs.`,
  noUnattendedRuns: () => 'No change was left in.',
  leftAcrossFloor: () => 'Nothing is left across a floor between visits: somebody falls over it.',
  leftHanging: () => 'Nothing is left hanging between visits.',
  leftOpen: () => 'Nothing is left open between visits: what is behind a cover stays behind it.',
  leftWithoutCooling: () => 'Nothing is left without its cooling between visits.',
  leftUnprotected: () => 'Nothing that protects somebody or something is put out of use between visits.',
  unattendedEndFar: ({ days }) => `A change is left in until a day ahead, within ${days} days.`,
  firmwareNotReadAgain: ({ device }, say) =>
    `The firmware of ${say.quoted(device)} was read before, and has to be read again; say so where it can’t be.`,
  noWatchToVoid: () => 'There is no watch that has ended and counts.',
  logUnknown: () => 'There is no log under that id.',
  requestUnknown: () => 'There is no request under that id.',
  deviceNotInChain: ({ device }, say) => `There is no device ${say.quoted(device)} in the chain as found.`,
  retestSaid: ({ verdict }, say) => `The retest of that change says: ${say.verdict(verdict)}.`,
  oneThingMissing: () => 'One thing is missing: add it, or say why it can’t be had.',
  thingsMissing: ({ count }) => `${count} things are missing: add them, or say why they can’t be had.`,
  evidenceNotOnTicket: ({ ids }, say) => `The ticket has no such evidence: ${ids.map(say.name).join(', ')}.`,
  stillWaitsFor: ({ requests }, say) => `Second line still waits for: ${requests.map(say.text).join('; ')}.`,
  momentOutsideWatch: ({ from, to }, say) =>
    `The watch went from ${say.moment(from)} to ${say.moment(to)}: give a time in it, or void the watch if its own times are wrong.`,
  triesTooFew: ({ needed, done }, say) =>
    `It takes ${needed} tries without the fault for that; there ${say.plural(done, 'was', 'were')} ${done}.`,
  looksTooFew: ({ needed, done }, say) =>
    `It takes ${needed} ${say.plural(needed, 'look', 'looks')} without the fault for that; there ${say.plural(done, 'was', 'were')} ${done}.`,
  quietTooShort: ({ needed, watched }) =>
    `“No fault found” needs ${Math.ceil(needed)} min of watching without the fault; there are ${Math.floor(watched)} so far.`,
  faultCameAfterRemedy: ({ occurrences }, say) =>
    `The fault came ${say.times(occurrences)} after the remedy: it is not closed by that.`,
  remedyNotShown: ({ reasons }, say) =>
    `The watch after the remedy does not show enough. ${say.messages(reasons)} Or close with a reason.`,
  outcomeDiffers: () => 'What was decided differs from what you were shown when you did this.',
  retestSays: ({ verdict }, say) => `The retest says: ${say.verdict(verdict)}.`,
  faultLiesOn: ({ side }, say) => `The fault lies ${say.side(side)} of the device.`,
  auditFound: ({ mustFix, shouldFix, notes }) =>
    `The audit finds ${mustFix} that must be fixed, ${shouldFix} that should be, and ${notes} to note.`,
  reopenTooLate: ({ days }, say) =>
    `A ticket can be reopened for ${days} ${say.plural(days, 'day', 'days')}; open a new one.`,
  momentInFuture: ({ moment }, say) => `${say.moment(moment)} is still to come: check the phone’s clock.`,
  momentBeforeTicket: ({ moment }, say) =>
    `${say.moment(moment)} is before the ticket was opened: check the phone’s clock.`,
  changeIsDeclared: ({ change, place }, say) =>
    `One change at a time: ‘${say.change(change)}’${at(place, say)} is declared and not finished yet.`,
  changeIsApplied: ({ change, place }, say) =>
    `One change at a time: ‘${say.change(change)}’${at(place, say)} is in place and not finished yet.`,
  changeIsJudged: ({ change, place }, say) =>
    `One change at a time: ‘${say.change(change)}’${at(place, say)} is judged and not finished yet.`,
  diagnosticInPlace: ({ change, place }, say) =>
    `A diagnostic change is still in place: ‘${say.change(change)}’${at(place, say)}. Put it back first.`,
  faultNotSeenWithAnyMenu: () => 'The fault was not seen with a menu up yet: no occurrence, no answer.',
  faultNotSeenWithMenu: ({ device }, say) =>
    `The fault was not seen with the menu of ${say.place(device)} up: no occurrence, no answer.`,
  menuContradicts: ({ device, stayed, vanished }, say) =>
    `At ${say.place(device)} the menu was not hit ${say.times(stayed)} and hit too ${say.times(vanished)}: the answers contradict each other. Withdraw the one that was misread, or let the watch that misled not count.`,
  sidesContradict: ({ side, device, others }, say) =>
    `A fault ${say.side(side)} of ${say.place(device)} can’t also lie ${say.and(others.map(say.message))}: nothing in the chain is both. Take back the side that is wrong, or void the watch that misled.`,
  sideOf: ({ side, device }, say) => `${say.side(side)} of ${say.place(device)}`,
  beforeLastRecorded: ({ moment, last }, say) =>
    `${say.moment(moment)} is before what was recorded last, ${say.moment(last)}: give a later time. A change made before that is entered afterwards, as one made already.`,
  watchBeganLater: ({ began }, say) =>
    `The watch began only at ${say.moment(began)}: give a later time. What came before it is for a note, since nobody watched.`,
  endBeforeSeen: ({ moment }, say) =>
    `${say.moment(moment)} is before the watch began, or before the fault was seen: give a later time, or correct when it was seen.`,
  notInThisState: ({ command, state }, say) =>
    `‘${say.term('command', command)}’ has no place while the ticket is in ‘${say.term('state', state)}’.`,
  evidenceNotNow: () => 'Evidence can’t be added or withdrawn now.',
  drawsNoMenu: ({ device }, say) => `${say.start(say.place(device))} draws no menu of its own.`,
  onNoWayToDisplay: ({ device }, say) =>
    `${say.start(say.place(device))} is on no way from a source to a display.`,
  commandLabel: ({ command }, say) => say.start(say.term('command', command)),
  factLabel: ({ fact }, say) => say.start(say.term('fact', fact)),
};
