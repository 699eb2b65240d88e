import type { stepCodes } from '../codes/steps.ts';
import type { Sentences } from '../sentences.ts';

export const stepsEn: Sentences<typeof stepCodes> = {
  beforeLooking: ({ todo }, say) => `Before looking for the fault, ${say.and(todo.map(say.message))}.`,
  lookThroughAudit: () => 'look through the audit',
  askWhatChanged: () => 'ask what has changed since it last worked',
  recordChainAsFound: () => 'record the chain as you found it',
  putRightFirst: ({ finding }, say) => `${say.message(finding)} Put that right before anything is swapped.`,
  worthKnowingFirst: ({ finding, whatToDo }, say) =>
    `Worth knowing before anything else: ${say.message(finding)} ${say.message(whatToDo)}`,

  tooRareToWatch: ({ everyDays, watch, ways }, say) =>
    `It comes about once in ${say.number(everyDays, 1)} ${say.plural(everyDays, 'day', 'days')} of use; waiting for it on site would take ${say.lengthOfTime(watch)}. Instead, by minutes and days: ${say.messages(ways)}`,
  reportedOftenEnough: ({ reports }) =>
    `The client reported it ${reports} times. Nobody here saw it, but that is enough to go on with, at a discount.`,
  wayOverDays: ({ way, minutes, days }, say) =>
    `${say.message(way)} (${say.lengthOfTime(minutes)} of work${days < 0.05 ? '' : `, ${say.number(days, days < 10 ? 1 : 0)} days`}).`,
  wayDiary: () => 'Open a diary, in which the client taps when it happens',
  wayLogs: () => 'Fetch and read the devices’ own logs',
  wayUnattended: () => 'Leave the change in between visits, with a diary',
  wayRemote: () => 'Have the client make a safe change, with a diary',
  wayVisit: () => 'Watch for it on site',
  leftInUntil: ({ until, owner }, say) =>
    `The change is left in until ${say.moment(until)}. To end its days: read the firmware again, and fetch the devices’ logs. Who sees to it: ${say.text(owner)}`,
  daysAreOver: () => 'The days in which the change was left in are over: judge what came in.',
  watchAtToldRate: ({ minutes, sureness }, say) =>
    `Watch for the fault as the client sees it, and touch nothing. At the rate the client tells, it should show within ${say.minutesNeeded(minutes)} (${say.percent(sureness)}).`,
  watchAtAssumedRate: ({ everyMin, minutes, sureness }, say) =>
    `Watch for the fault as the client sees it, and touch nothing. With no rate told, one in ${say.lengthOfTime(everyMin)} is assumed; it should show within ${say.minutesNeeded(minutes)} (${say.percent(sureness)}).`,
  wasNotAsTold: () =>
    'It did not show as the client told. Perhaps it comes and goes: say so, and it is watched for. Or settle on “no fault found”.',
  itComesAndGoes: () => 'It comes and goes: put that right in what was told',
  playWhatShowsIt: ({ kind, what }, say) =>
    `Play what shows it: the ${say.term('onlyWith', kind)}${what === null ? '' : ` ${say.text(what)}`}.`,
  lookOnceForFault: () => 'It is told to be always there: look once, and say whether it is.',
  tryWhatMakesItCome: ({ trigger, tries }, say) =>
    `It comes ${say.term('patternTrigger', trigger)}: try just that, and count each try. If it comes that way, it should show within ${tries} ${say.plural(tries, 'try', 'tries')}.`,
  tryWhatMayMakeItCome: ({ tries }, say) =>
    `Nobody knows how it comes: before waiting for it, try what often makes such a fault come. Switch everything off and on, change the source, start a title, change the format, and count each try. ${say.plural(tries, 'One more try', `${tries} more tries`)} will do.`,
  sayWhatMadeItCome: () => 'If you saw what made it come, say so before you go on.',
  itCameBy: ({ trigger }, say) => `It came ${say.term('patternTrigger', trigger)}`,
  itCameByItself: () => 'It came by itself, by nothing that was tried',
  itIsAlwaysThere: () => 'It is there all the time',
  tooRareToWaitFor: () => 'It comes too rarely to be waited for on a visit.',
  watchForBursts: () =>
    'It comes in bursts: watch long enough to see more than one of them, each counts once.',
  watchOnceWarm: ({ after }, say) =>
    after === null
      ? 'It comes only when warm: watch from switching on, and note how long everything has been on.'
      : `It comes only after ${say.minutesNeeded(after)}: say for how long everything has been on, and watch until it was warm for long enough. Minutes before that don’t count.`,
  seenTryForMore: ({ seen, enough, moreTries, thenRetestTries, retestTries }, say) =>
    `Failed ${say.times(seen)}. Try on until it failed ${say.times(enough)} (about ${moreTries} more): every retest then takes ${thenRetestTries} good tries instead of ${retestTries}.`,
  faultIsThere: () => 'The fault is there',
  faultThereMenuStayed: () => 'The fault is there, the menu is clean',
  faultThereMenuVanished: () => 'The fault is there, the menu has it too',
  faultIsNotThere: () => 'The fault is not there',
  lookAtRemedy: ({ looks }, say) =>
    `Look whether the remedy holds: ${say.plural(looks, 'one good look', `${looks} good looks`)} before it can be closed.`,
  shouldHaveShown: () =>
    'It should have shown by now. Try what makes it come (switching, warming up, the content the client named), or settle on “no fault found”.',
  seenWatchForMore: ({ seen, enough, moreMin, thenRetestMin, retestMin }, say) =>
    `Seen ${say.times(seen)}. Watch on until it was seen ${say.times(enough)} (about ${say.minutesNeeded(moreMin)} more): every quiet retest then takes ${say.minutesNeeded(thenRetestMin)} instead of ${say.minutesNeeded(retestMin)}.`,
  faultReproduced: ({ seen }, say) =>
    `Seen ${say.times(seen)}: the fault is reproduced. Go on and find the side.`,

  menuUpWait: ({ place }, say) =>
    `The menu of ${say.place(place)} is up: wait for the fault, then say whether the menu stayed as it was, or was hit too. One occurrence answers.`,
  menuUpSeen: ({ seen, place }, say) =>
    `Seen ${say.times(seen)} with the menu of ${say.place(place)} up: end the watch and conclude the side.`,
  concludeSideAt: ({ place }, say) => `Conclude the side at ${say.place(place)} from what you saw.`,
  noMenuToProveSide: () =>
    'Nothing in this chain draws a menu of its own, so no side can be proven here: hand the case to second line with the record.',
  sideInTheWay: ({ place, chance, within }, say) =>
    `Nothing worth its time is left on this side of ${say.place(place)}, and by all that was seen since the fault lies rather where that side ruled it out (${say.percent(chance)}, against ${say.percent(within)}). Take the side back, and go on there.`,
  takeSideBack: ({ place }, say) => `Take back the side found at ${say.place(place)}, and go on`,
  proveSideFirst: ({ place }, say) =>
    `Prove the side before anything is changed: put up the menu of ${say.place(place)} and wait for the fault.`,
  menuInstructions: () =>
    'Bring up the menu with the remote control and leave it in the picture. When the fault comes, look at the menu: does it stay as it is, or is it hit too: gone with the picture, or with the same marks in it?',
  menuAfterwards: () => 'Take the menu off the picture again.',
  sourceInstructions: () =>
    'Leave everything plugged in as it is and play the other source with the same kind of content.',
  sourceAfterwards: () => 'Go back to the usual source.',

  byAllThatIsKnown: ({ place }, say) => `By all that is known it is ${say.place(place)}.`,
  proveByOneChange: ({ place, probability }, say) =>
    `By all that is known it is ${say.place(place)} (${say.percent(probability)}). Prove it by one change.`,
  provesSuspect: ({ place }, say) =>
    `It takes the fault away if it is ${say.place(place)}, and hardly if it is anything else.`,
  remediesInVain: ({ remedies }) =>
    `${remedies} remedies did not hold. Hand the case to second line with what was found, or go on if you see why.`,
  manyInVain: ({ changes }) =>
    `${changes} changes have taken nothing away: the case is not what it looks like. Hand it to second line with what was found, or go on if you see why.`,
  longInVain: ({ changes }, say) =>
    `${changes} ${say.plural(changes, 'change was', 'changes were')} tried and judged, with many watches, and it is not solved. Hand it to second line with what was found, or go on if you see why.`,
  culpritNamed: () =>
    'The culprit is named. Settle on a repair; or on a workaround that the client accepts in so many words.',
  settleOnRepair: () => 'Settle on a repair',
  settleOnWorkaround: () => 'Settle on a workaround that the client accepts',
  closeAnyway: () => 'Close it all the same, with a reason',
  nameCulpritAt: ({ place }, say) => `Name the culprit: ${say.place(place)}`,
  answerSecondLine: ({ question }, say) => `Answer second line: ${say.text(question)}`,
  doTheRepair: () => 'Do the repair, describe the chain as you leave it, and watch whether it holds.',
  leaveAsItIs: () =>
    'Nothing is repaired, since nothing was found: leave the chain as it was, and describe it as you leave it.',
  closeNoFaultFound: () =>
    'The fault did not show for as long as it should have: close the ticket, and tell the client what to note down if it comes again.',
  cameAfterRemedy: () =>
    'The fault came after the remedy: say so, and look on from the start with what is known now.',
  remedyHeld: () => 'The remedy has held long enough: close the ticket.',
  watchRemedyMinutes: ({ minutes }, say) =>
    `Watch whether the remedy holds: ${say.minutesNeeded(minutes)} without the fault before it can be closed.`,
  watchRemedyTries: ({ tries }, say) =>
    `Watch whether the remedy holds: ${tries} ${say.plural(tries, 'try', 'tries')} in a row without the fault before it can be closed.`,
  remedyTooRareToWatch: () =>
    'It comes so rarely that no visit shows whether the remedy holds. Let the ticket wait for what the client reports; if nothing comes, close it with that as the reason.',
  watchRemedy: ({ how }, say) => `Watch whether the remedy holds: ${say.message(how)}`,

  changePerhapsRarer: ({ change, place, chance, minutes }, say) =>
    `With the change (${say.change(change)}, ${say.place(place)}) the fault came, but perhaps more rarely: there may be two faults (${say.percent(chance)}). Watch for another ${say.minutesNeeded(minutes)}: if it stays away, the change took away one of two.`,
  changeMadeItRarer: ({ change, place, chance }, say) =>
    `With the change (${say.change(change)}, ${say.place(place)}) the fault still comes, but clearly more rarely: perhaps there were two faults (${say.percent(chance)}). Let it stay and look for the other one, from its own baseline.`,
  changeMadeItRarerGoesBack: ({ change, place, chance }, say) =>
    `With the change (${say.change(change)}, ${say.place(place)}) the fault still comes, but clearly more rarely: perhaps there are two faults (${say.percent(chance)}), and this took one of them away. It can’t stay: put it back. It takes little suspicion from what it was made to.`,
  keepAsOneOfTwo: () => 'Let it stay as one of perhaps two faults, and look for the other one',
  perhapsTwoFaults: ({ chance, change, place }, say) =>
    `Perhaps two faults (${say.percent(chance)}): since ${say.change(change)}, ${say.place(place)}, it comes more rarely. This round is about the other one.`,

  clientChooses: () =>
    'Show the client the ways on, with their minutes, days and sureness, and write down what they choose.',
  replaceOnSuspicionHere: ({ what }, say) => `Repair on suspicion, unproven: ${say.message(what)}`,
  closeUnproven: () =>
    'Repaired on suspicion: nothing has proven it. Check everything before leaving and close; the client is asked in 14 days how it holds.',
  checkBeforeLeaving: () =>
    'Before leaving, try every source once on every display, the sound and the usual start',
  waitForPart: ({ for: test }, say) => `Let the ticket wait for what this takes: ${say.message(test)}`,
  waitForReports: ({ until }, say) =>
    `Let the ticket wait until ${say.moment(until)} for what the client reports`,
  waitForLogs: ({ until }, say) =>
    `Let the ticket wait until ${say.moment(until)} for the devices’ own logs: fetch them then, add them and read what they show`,
  ticketIsWaiting: ({ kind, what, actor, until }, say) =>
    `The ticket waits until ${say.moment(until)}. For: ${say.term('waitingKind', kind)}, ${say.text(what)}. To act: ${say.term('actingParty', actor)}. Go on with the work as soon as that is there.`,
  secondLineAsks: ({ questions }, say) => `Second line asks: ${questions.map(say.text).join('; ')}`,
  secondLineDirects: ({ step }, say) => `Second line says: ${say.text(step)}`,
  secondLineHandedBack: ({ reason }, say) => `Second line has given the case back: ${say.text(reason)}`,
  everyQuestionAnswered: () => 'Every question of second line has its answer: send the case again.',
  secondLineHasCase: () =>
    'Second line has the case. Nothing has to be done here meanwhile; leave the chain as it is.',
  ticketClosed: () => 'The ticket is closed.',
};
