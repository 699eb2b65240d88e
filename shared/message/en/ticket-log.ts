import type { ticketLogCodes } from '../codes/ticket-log.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

/** What somebody added in words of their own. */
const more = (text: string | null, say: Say): string => (text === null ? '' : ` ${say.text(text)}`);
const menuDid = (menu: Kinds['menu'] | null): string => (menu === null ? '' : `, the menu ${menu}`);

export const ticketLogEn: Sentences<typeof ticketLogCodes> = {
  'log/ticketOpened': () => 'Ticket opened.',
  'log/takenFromTechnician': () => 'Taken from its technician.',
  'log/assignedToTechnician': () => 'Assigned to a technician.',
  'log/takenOver': () => 'Taken over.',
  'log/ticketUpdated': ({ priority, visit }, say) =>
    `Ticket updated: priority ${say.term('priority', priority)}, ${visit === null ? 'visit not set' : `visit ${say.moment(visit)}`}.`,
  'log/textErased': ({ texts, reason }, say) =>
    `A text was erased${say.plural(texts, '', `, in ${texts} places`)}: ${say.text(reason)}`,
  'log/noteWritten': ({ text }, say) => `Note: ${say.text(text)}`,
  'log/symptomCorrected': ({ symptom }, say) => `Symptom corrected: ${say.term('symptom', symptom)}.`,
  'log/symptomAmended': ({ symptom, told }, say) =>
    `Symptom corrected: ${say.term('symptom', symptom)}. ${told.map((one) => `${say.message(one)}.`).join(' ')}`,
  'log/auditReviewed': ({ version, mustFix, shouldFix, note }, say) =>
    `Audit of chain version ${version} looked at: ${mustFix} to fix, ${shouldFix} that should be.${more(note, say)}`,
  'log/whatChangedAnswered': ({ answers }, say) => `What changed: ${answers.map(say.message).join('; ')}.`,
  'log/changedBefore': ({ what, text }, say) => `${say.term('whatChanged', what)}${more(text, say)}`,
  'log/asFoundRecorded': ({ version }) => `As found: chain version ${version}.`,
  'log/watchStarted': ({ planned, trigger, byTrigger, menuOf }, say) =>
    `Watch started${byTrigger ? ` by switching (${trigger === null ? 'trigger not named' : say.text(trigger)})` : ''}${planned === null ? '' : `, ${say.minutesNeeded(planned)} planned`}${menuOf === null ? '' : `, with the menu of ${say.place(menuOf)} up`}.`,
  'log/lookStarted': ({ menuOf }, say) =>
    `A look at the fault${menuOf === null ? '' : `, with the menu of ${say.place(menuOf)} up`}.`,
  'log/triesStarted': ({ trigger, menuOf }, say) =>
    `Tries started: whether it comes ${say.term('patternTrigger', trigger)}${menuOf === null ? '' : `, with the menu of ${say.place(menuOf)} up`}.`,
  'log/faultCame': ({ lasted, menu, description }, say) =>
    `The fault came${lasted === null ? '' : `, for ${say.number(lasted)} s`}${menuDid(menu)}.${more(description, say)}`,
  'log/faultConfirmedByLog': ({ at, menu, description }, say) =>
    `A log shows that the fault came at ${say.moment(at)}${menuDid(menu)}: confirmed.${more(description, say)}`,
  'log/loggedWasNone': ({ at }, say) => `What a log shows at ${say.moment(at)} was not the fault.`,
  'log/loggedOpenAgain': ({ at }, say) => `What a log shows at ${say.moment(at)} is open again.`,
  'log/tryWentWell': () => 'One try without the fault.',
  'log/occurrenceWithdrawn': ({ reason }, say) => `An occurrence was withdrawn: ${say.text(reason)}`,
  'log/occurrenceMoved': ({ at, reason }, say) =>
    `The fault came at another time, ${say.moment(at)}: ${say.text(reason)}`,
  'log/watchVoided': ({ reason }, say) => `A watch does not count any more: ${say.text(reason)}`,
  'log/watchEnded': () => 'Watch ended.',
  'log/faultReproduced': () => 'The fault is reproduced.',
  'log/sideConcluded': ({ device, side }, say) =>
    `Side concluded at ${say.place(device)}: the fault lies ${say.side(side)} of it.`,
  'log/sideWithdrawn': ({ device, reason }, say) =>
    `The side at ${say.place(device)} was withdrawn: ${say.text(reason)}`,
  'log/substitutionBegun': () => 'Substitution begins.',
  'log/backToSide': ({ reason }, say) => `Back to locating the side: ${say.text(reason)}`,
  'log/changeDeclared': ({ change, place, expected, detail }, say) =>
    `Change declared: ${say.change(change)}, ${say.place(place)}. Expected: ${say.text(expected)}${more(detail, say)}`,
  'log/lateChangeEntered': ({ change, place, madeAt, madeBy, seen }, say) =>
    `Entered afterwards: ${say.change(change)}, ${say.place(place)}, made at ${say.moment(madeAt)} by ${say.text(madeBy)}. ${say.term('lateFinding', seen)}.`,
  'log/changeWithdrawn': ({ reason }, say) => `The declared change was withdrawn: ${say.text(reason)}`,
  'log/changeInPlace': () => 'The change is in place.',
  'log/retestJudged': ({ verdict }, say) => `Retest judged by the watch: ${say.verdict(verdict)}.`,
  'log/retestJudgedByHand': ({ verdict, reason }, say) =>
    `Retest judged by hand, ${say.verdict(verdict)}: ${say.text(reason)}`,
  'log/changePutBack': ({ note }, say) => `The change was put back.${more(note, say)}`,
  'log/changeKeptAsOneOfTwo': ({ chance, note }, say) =>
    `The change stays: perhaps one of two faults (${say.percent(chance)}). The other one is looked for in a new round.${more(note, say)}`,
  'log/changeKept': ({ note }, say) => `The change stays.${more(note, say)}`,
  'log/culpritNamed': ({ place, explanation }, say) =>
    `Culprit: ${say.place(place)}. ${say.text(explanation)}`,
  'log/culpritWithdrawn': ({ reason }, say) => `The culprit was withdrawn: ${say.text(reason)}`,
  'log/repairChosen': ({ what }, say) => `Remedy, a permanent repair: ${say.text(what)}`,
  'log/workaroundChosen': ({ what }, say) =>
    `Remedy, a workaround that the client accepts: ${say.text(what)}`,
  'log/noFaultFoundChosen': ({ what }, say) => `Settled on no fault found: ${say.text(what)}`,
  'log/remedyWithdrawn': ({ reason }, say) => `The remedy was withdrawn: ${say.text(reason)}`,
  'log/remedyFinished': ({ version }) => `The remedy is done. As left: chain version ${version}.`,
  'log/partsInstalled': ({ version, places }, say) =>
    `The remedy is done, with another part in place of: ${say.and(places.map((place) => say.place(place)))}. As left: chain version ${version}.`,
  'log/faultIsBack': ({ reason }, say) => `The fault came back: ${say.text(reason)}`,
  'log/closed': ({ note }, say) => `Closed.${more(note, say)}`,
  'log/closedWithLess': ({ reason, note }, say) =>
    `Closed with less than the full watch: ${say.text(reason)}${more(note, say)}`,
  'log/reopened': ({ reason }, say) => `Reopened: ${say.text(reason)}`,
  'log/clientChose': ({ way, chosenBy }, say) =>
    `The client chose (${say.text(chosenBy)}): ${say.term('choiceWay', way)}.`,
  'log/replacedOnSuspicion': ({ what, place, chance }, say) =>
    `Repaired on suspicion, unproven: ${say.text(what)}, ${say.place(place)} (chance ${say.percent(chance)}).`,
  'log/askedAfterRepair': ({ heard, again, note }, say) =>
    `The client was asked how the repair holds: ${say.term('followUpOutcome', heard)}.${again === null ? '' : ` To be asked again by ${say.moment(again)}.`}${more(note, say)}`,
  'log/checkedBeforeLeaving': ({ work, fail, notChecked, sound, usualStart, note }, say) =>
    `Before leaving: of the sources on the displays ${work} work, ${fail} fail, ${notChecked} not checked. Sound: ${say.term('checkAnswer', sound)}. Usual start: ${say.term('checkAnswer', usualStart)}.${more(note, say)}`,
  'log/waits': ({ kind, what, actor, until }, say) =>
    `The ticket waits until ${say.moment(until)}. For: ${say.term('waitingKind', kind)}, ${say.text(what)}. To act: ${say.term('actingParty', actor)}.`,
  'log/workResumed': ({ note }, say) => `The work goes on.${more(note, say)}`,
  'log/toSecondLine': ({ question }, say) => `To second line: ${say.text(question)}`,
  'log/answeredSecondLine': ({ text }, say) => `Answer to second line: ${say.text(text)}`,
  'log/toSecondLineAgain': ({ question }, say) => `To second line again.${more(question, say)}`,
  'log/recalled': ({ reason }, say) => `Taken back from second line: ${say.text(reason)}`,
  'log/caseTaken': () => 'Second line took the case.',
  'log/askedForMore': ({ requests }, say) => `Second line asks: ${requests.map(say.text).join('; ')}`,
  'log/stepDirected': ({ text }, say) => `Second line directs a step: ${say.text(text)}`,
  'log/caseAccepted': ({ finding }, say) => `Second line accepts the case. Finding: ${say.text(finding)}`,
  'log/caseHandedBack': ({ reason }, say) => `Second line hands the case back: ${say.text(reason)}`,
  'log/figuresChanged': () =>
    'The organisation’s figures have changed: what follows is decided by the new ones.',
  'log/reproductionRevised': () => 'Nothing shows the fault any more: it has to be seen again.',
  'log/sideRevised': ({ device, side }, say) =>
    `Corrected: seen from ${say.place(device)}, the fault lies ${say.side(side)} of it.`,
  'log/sideFell': ({ device }, say) =>
    `Corrected: the watches at ${say.place(device)} don’t show the side any more.`,
  'log/judgementRevised': ({ verdict }, say) => `Corrected: the retest says ${say.verdict(verdict)}.`,
  'log/judgementFell': () => 'Corrected: the retest says nothing any more, and has to be made again.',
  'log/culpritRevised': () => 'Corrected: nothing shows the culprit any more.',
  'log/remedyRevised': () => 'Corrected: “no fault found” does not hold any more.',
  'log/evidenceAdded': ({ kind }, say) => `Evidence added: ${say.term('evidenceKind', kind)}.`,
  'log/evidenceWithdrawn': ({ reason }, say) => `Evidence withdrawn: ${say.text(reason)}`,
  'log/diaryOpened': ({ until }, say) => `A diary was opened for the client, until ${say.moment(until)}.`,
  'log/diaryClosed': () => 'The client’s diary was closed.',
  'log/occurrenceReported': ({ at }, say) =>
    `The client reports that the fault came: ${say.moment(at)}. Nobody on the ticket saw it.`,
  'log/reportDeleted': () => 'The client reported that the fault came, and deleted that since.',
  'log/reportAnswered': () => 'The client said more of what they reported.',
  'log/reportWithdrawn': ({ reason }, say) => `A report of the client does not count: ${say.text(reason)}`,
  'log/leftInPlace': ({ until, owner }, say) =>
    `The change was left in until ${say.moment(until)}, with the client’s yes. Who sees to it: ${say.text(owner)}`,
  'log/unattendedEnded': ({ logged }) =>
    logged === 0
      ? 'The days in which the change was left in are over. No log shows the fault in them.'
      : `The days in which the change was left in are over. Logs show the fault ${logged} times in them.`,
  'log/reportsErased': ({ reports }, say) =>
    `The client deleted what they had sent: ${reports} ${say.plural(reports, 'report', 'reports')}.`,
  'log/eventOfLaterVersion': ({ type }) => `An event that this version does not know: ${type}.`,
  'log/chainChanged': ({ changes }, say) => `The chain was changed. ${say.messages(changes)}`,
  'log/packetMade': ({ version }) => `Case packet, version ${version}.`,
};
