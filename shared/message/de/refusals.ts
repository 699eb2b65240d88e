import type { refusalsCodes } from '../codes/refusals.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { NamedPlace } from '../values.ts';

const at = (place: NamedPlace | null, say: Say): string => (place === null ? '' : `, ${say.place(place)},`);

export const refusalsDe: Sentences<typeof refusalsCodes> = {
  chainNotAsFound: () => 'Eine Änderung ist offen: Die Kette ist nicht wie vorgefunden.',
  sideRestsOnChain: () =>
    'Für die Kette wie festgehalten wurde eine Seite festgelegt: Nimm das zuerst zurück.',
  recordAsFoundFirst: () => 'Halte zuerst die Kette fest wie vorgefunden.',
  triggerMissing: () => 'Sag, was den Fehler kommen lässt: Jeder Versuch ist einmal dieses Schalten.',
  menuDeviceMissing: () => 'Sag, das Menü welches Geräts im Bild steht.',
  noChangeInPlace: () => 'Keine Änderung ist eingebaut.',
  retestJudgedAlready: () => 'Der Nachtest ist bewertet: Bau die Änderung zurück oder behalte sie.',
  nothingToConfirm: () =>
    'Es gibt nichts zu bestätigen: Keine Änderung, die den Fehler behob, wurde zurückgebaut.',
  noWatchRunning: () => 'Keine Beobachtung läuft: Beginn zuerst eine.',
  watchRunning: () => 'Eine Beobachtung läuft: Beende sie zuerst.',
  menuAnswerMissing: () => 'Blieb das Menü, wie es war, oder war es mitbetroffen?',
  watchCountsTime: () => 'Diese Beobachtung zählt Zeit, nicht Versuche: Beginn eine mit einem Auslöser.',
  faultNotSeenYet: () =>
    'Der Fehler wurde noch nicht gesehen: Beobachte weiter, oder versuch einen anderen Auslöser.',
  occurrenceWithdrawnAlready: () => 'Dieses Vorkommen wurde schon zurückgenommen.',
  noOccurrenceToWithdraw: () => 'Es gibt kein Vorkommen zurückzunehmen.',
  watchStillRunning: () => 'Diese Beobachtung läuft noch: Halte fest, was du siehst.',
  triesJudgedWhenMade: () => 'In einer Beobachtung mit Versuchen wurde jeder Versuch gleich beurteilt.',
  watchOfEarlierRound: () => 'Diese Beobachtung gehört zu einer früheren Runde.',
  occurrenceRecordedAlready: () => 'Dieses Vorkommen ist schon festgehalten.',
  contradictsSideThere: () =>
    'Das widerspricht der Seite, die dort festgelegt ist: Nimm zuerst die Seite zurück.',
  needsEndedWatchAndLog: () => 'Das braucht eine beendete Beobachtung und ein Protokoll.',
  closedReopenFirst: () => 'Das Ticket ist abgeschlossen: Öffne es zuerst wieder.',
  cureIsKept: () =>
    'Eine Änderung, die den Fehler behob, wurde behalten; eine weitere könnte nichts zeigen. Benenn die Ursache, oder geh zurück zur Seite und sieh den Fehler noch einmal.',
  noChangeDeclared: () => 'Keine Änderung ist angesagt.',
  noChangeOpen: () => 'Keine Änderung ist offen.',
  changeMadeAlready: () => 'Die Änderung ist schon gemacht: Bau sie zurück oder behalte sie.',
  watchWithChangeFirst: () => 'Beobachte zuerst mit der Änderung, über die Zeit oder mit Versuchen.',
  cannotBePutBack: () => 'Das lässt sich nicht zurückbauen: Behalte es.',
  noSideYet: () => 'Noch ist keine Seite bekannt: Beobachte mit dem Menü eines Geräts und leg sie fest.',
  sideConcludedAlready: () => 'An diesem Gerät ist die Seite schon festgelegt.',
  noSideConcluded: () => 'Keine Seite ist festgelegt.',
  noSideAtDevice: () => 'An diesem Gerät ist keine Seite festgelegt.',
  diagnosticMustGoBack: () => 'Es ist eine Änderung zur Fehlersuche: Sie muss zurückgebaut werden.',
  didNotClear: () => 'Sie hat den Fehler nicht behoben: Bau sie zurück.',
  curedByWhatUnknown: () =>
    'Es weicht mehr ab als angesagt; was den Fehler behob, ist also nicht bekannt: Bau sie zurück.',
  changeNotFinished: () => 'Diese Änderung ist nicht fertig.',
  changeShowsNoCulprit: () => 'Diese Änderung ist nur Auskunft: Sie weist keine Ursache nach.',
  changeNotRetested: () => 'Diese Änderung wurde nicht nachgetestet.',
  retestNotAttributable: () =>
    'Bei diesem Nachtest wich mehr ab als angesagt; er lässt sich der Änderung nicht zuschreiben.',
  loggedAnsweredAlready: () => 'Das wurde von dem, was das Protokoll dort zeigt, schon gesagt.',
  placeNotInChain: () =>
    'In der Kette wie vorgefunden gibt es diesen Ort nicht. Ist er doch da, nimm die Seiten zurück, berichtige die Beschreibung der Kette und halte sie neu als vorgefunden fest.',
  nothingClearedYet: () => 'Keine Änderung hat den Fehler in einem Nachtest behoben, der zählt.',
  changeNotInRound: () => 'In dieser Runde gibt es diese Änderung nicht.',
  watchNotAfterPutBack: () => 'Diese Beobachtung wurde nicht nach dem Rückbau dieser Änderung gemacht.',
  faultDidNotReturn: () =>
    'In dieser Beobachtung kam der Fehler nicht wieder: Sag, warum die Bestätigung fehlt.',
  faultWasSeen: () => 'Der Fehler wurde gesehen: Mach weiter und finde die Seite.',
  remedyNeedsCulprit: () => 'Eine Reparatur oder ein Umweg braucht eine Ursache; noch ist nichts gefunden.',
  faultWasFound: () => 'Eine Ursache ist benannt, also gibt es einen Fehler: Reparier ihn oder umgeh ihn.',
  acceptanceInFuture: () => 'Die Annahme durch den Kunden liegt ihrer Zeit nach noch in der Zukunft.',
  culpritIsNamed: () => 'Eine Ursache ist benannt.',
  noCulpritNamed: () => 'Keine Ursache ist benannt.',
  recordFaultFirst: () => 'Halte den Fehler zuerst in einer Beobachtung fest.',
  nothingAsked: () => 'Die zweite Ebene wartet auf keine Antwort.',
  requestAnsweredAlready: () => 'Diese Frage ist schon beantwortet.',
  evidenceUnknown: () => 'Das Ticket hat diesen Beleg nicht.',
  ticketHasNoSuchWatch: () => 'Das Ticket hat keine Beobachtung unter dieser Kennung.',
  ticketHasNoSuchChange: () => 'Das Ticket hat keine Änderung unter dieser Kennung.',
  evidenceWithdrawnAlready: () => 'Dieser Beleg wurde schon zurückgezogen.',
  sayOneOfTwo: () =>
    'Der Fehler kommt noch, aber seltener: Sie kann als einer von vielleicht zwei Fehlern bleiben oder zurückgebaut werden.',
  notOneOfTwoHere: () => 'Mit ihr ist der Fehler weg: Sie bleibt als das, was ihn behoben hat.',
  lateChangeInFuture: () => 'Das liegt in der Zukunft: Trag ein, wann sie gemacht wurde.',
  undoneBeforeMade: () =>
    'Sie kann nicht rückgängig gemacht worden sein, bevor sie gemacht wurde: Trag ein, wann sie rückgängig gemacht wurde.',
  lateDiagnosticStillThere: () =>
    'Das muss zurück, bevor es weitergeht: Bau es jetzt zurück und trag es mit der Zeit ein, zu der es zurückgebaut wurde.',
  lateChangeBesideAnother: ({ change, place }, say) =>
    `Zu dieser Zeit war eine andere Änderung eingebaut: ${say.change(change)}${at(place, say)}. Zwei zugleich beweisen nichts: Lass die Beobachtungen aus dieser Zeit nicht gelten und schreib diese hier als Notiz auf.`,
  clientChoosesFirst: () =>
    'Auf Verdacht zu reparieren ist die Wahl des Kunden: Zeig ihm die Wege und schreib zuerst auf, was er gewählt hat.',
  nothingToAskAfter: () => 'Es gibt keine Reparatur, nach der zu fragen wäre.',
  picturesLeftOut: ({ count }, say) =>
    `${say.plural(count, 'Eine Quelle an einer Anzeige ist', `${count} Paare aus Quelle und Anzeige sind`)} ohne Antwort. „Nicht geprüft“ ist eine.`,
  ticketWaits: ({ what, until }, say) =>
    `Das Ticket wartet bis ${say.moment(until)} (${say.text(what)}): Nimm zuerst die Arbeit wieder auf.`,
  waitIsOver: ({ moment }, say) => `${say.moment(moment)} ist schon vorbei: Nenne einen späteren Termin.`,
  caseTakenAlready: () => 'Du hast diesen Fall schon übernommen.',
  watchIdTaken: () => 'Unter dieser Kennung gibt es schon eine Beobachtung.',
  occurrenceIdTaken: () => 'Unter dieser Kennung gibt es schon ein Vorkommen.',
  changeIdTaken: () => 'Unter dieser Kennung gibt es schon eine Änderung.',
  evidenceIdTaken: () => 'Unter dieser Kennung gibt es schon einen Beleg.',
  requestIdTaken: () => 'Unter dieser Kennung gibt es schon eine Frage.',
  occurrenceUnknown: () => 'Unter dieser Kennung gibt es kein Vorkommen.',
  watchUnknown: () => 'Unter dieser Kennung gibt es keine Beobachtung.',
  watchVoidedAlready: () => 'Diese Beobachtung zählt nicht mehr.',
  diaryIdTaken: () => 'Ein Tagebuch mit dieser Kennung gibt es schon.',
  diaryUnknown: () => 'Ein solches Tagebuch hat der Auftrag nicht.',
  reportSentAlready: () => 'Diese Meldung gibt es schon.',
  reportUnknown: () => 'Eine solche Meldung des Kunden hat der Auftrag nicht.',
  reportWithdrawnAlready: () => 'Diese Meldung zählt nicht mehr.',
  noReportToWithdraw: () => 'Es gibt keine Meldung des Kunden, die zählt.',
  noSuchDiary: () => 'Ein solches Tagebuch gibt es nicht.',
  unattendedRuns: ({ until }, say) =>
    `Eine Änderung wurde bis ${say.moment(until)} belassen. Beenden Sie das zuerst: Firmware noch einmal lesen, Protokolle holen.`,
  noUnattendedRuns: () => 'Es wurde keine Änderung belassen.',
  leftAcrossFloor: () => 'Zwischen Besuchen bleibt nichts über den Boden liegen: Jemand stürzt darüber.',
  leftHanging: () => 'Zwischen Besuchen bleibt nichts hängen.',
  leftOpen: () => 'Zwischen Besuchen bleibt nichts offen: Was hinter einer Abdeckung ist, bleibt dahinter.',
  leftWithoutCooling: () => 'Zwischen Besuchen bleibt nichts ohne seine Kühlung.',
  leftUnprotected: () =>
    'Zwischen Besuchen wird nichts außer Kraft gesetzt, was jemanden oder etwas schützt.',
  unattendedEndFar: ({ days }) =>
    `Eine Änderung bleibt bis zu einem Tag, der bevorsteht, innerhalb von ${days} Tagen.`,
  firmwareNotReadAgain: ({ device }, say) =>
    `Die Firmware von ${say.quoted(device)} wurde vorher gelesen und muss noch einmal gelesen werden; sagen Sie es, wo das nicht geht.`,
  noWatchToVoid: () => 'Es gibt keine beendete Beobachtung, die zählt.',
  logUnknown: () => 'Unter dieser Kennung gibt es kein Protokoll.',
  requestUnknown: () => 'Unter dieser Kennung gibt es keine Frage.',
  deviceNotInChain: ({ device }, say) =>
    `In der Kette wie vorgefunden gibt es kein Gerät ${say.quoted(device)}.`,
  retestSaid: ({ verdict }, say) => `Der Nachtest dieser Änderung sagt: ${say.verdict(verdict)}.`,
  oneThingMissing: () => 'Eine Sache fehlt: Ergänz sie, oder sag, warum sie nicht zu haben ist.',
  thingsMissing: ({ count }) =>
    `${count} Sachen fehlen: Ergänz sie, oder sag, warum sie nicht zu haben sind.`,
  evidenceNotOnTicket: ({ ids }, say) =>
    `Das Ticket hat diesen Beleg nicht: ${ids.map(say.name).join(', ')}.`,
  stillWaitsFor: ({ requests }, say) =>
    `Die zweite Ebene wartet noch auf: ${requests.map(say.text).join('; ')}.`,
  momentOutsideWatch: ({ from, to }, say) =>
    `Die Beobachtung ging von ${say.moment(from)} bis ${say.moment(to)}: Nenne eine Zeit darin, oder erklär die Beobachtung für ungültig, wenn ihre eigenen Zeiten falsch sind.`,
  triesTooFew: ({ needed, done }) => `Dafür braucht es ${needed} Versuche ohne den Fehler; bisher ${done}.`,
  looksTooFew: ({ needed, done }, say) =>
    `Dafür ${say.plural(needed, 'braucht es einen Blick', `braucht es ${needed} Blicke`)} ohne den Fehler; bisher ${done}.`,
  quietTooShort: ({ needed, watched }) =>
    `„Kein Fehler gefunden“ braucht ${Math.ceil(needed)} min Beobachtung ohne den Fehler; bisher sind es ${Math.floor(watched)}.`,
  faultCameAfterRemedy: ({ occurrences }, say) =>
    `Der Fehler kam ${say.times(occurrences)} nach der Abhilfe: Damit ist es nicht erledigt.`,
  remedyNotShown: ({ reasons }, say) =>
    `Die Beobachtung nach der Abhilfe zeigt nicht genug. ${say.messages(reasons)} Oder schließ mit einem Grund ab.`,
  outcomeDiffers: () => 'Entschieden wurde etwas anderes, als dir dabei gezeigt wurde.',
  retestSays: ({ verdict }, say) => `Der Nachtest sagt: ${say.verdict(verdict)}.`,
  faultLiesOn: ({ side }, say) => `Der Fehler liegt ${say.side(side)} dem Gerät.`,
  auditFound: ({ mustFix, shouldFix, notes }) =>
    `Die Prüfung findet ${mustFix}, was behoben werden muss, ${shouldFix}, was behoben werden sollte, und ${notes} zur Kenntnis.`,
  reopenTooLate: ({ days }, say) =>
    `Ein Ticket lässt sich ${days} ${say.plural(days, 'Tag', 'Tage')} lang wieder öffnen; eröffne ein neues.`,
  momentInFuture: ({ moment }, say) =>
    `${say.moment(moment)} liegt noch in der Zukunft: Prüf die Uhr des Telefons.`,
  momentBeforeTicket: ({ moment }, say) =>
    `${say.moment(moment)} liegt vor der Eröffnung des Tickets: Prüf die Uhr des Telefons.`,
  changeIsDeclared: ({ change, place }, say) =>
    `Eine Änderung nach der anderen: „${say.change(change)}“${at(place, say)} ist angesagt und noch nicht fertig.`,
  changeIsApplied: ({ change, place }, say) =>
    `Eine Änderung nach der anderen: „${say.change(change)}“${at(place, say)} ist eingebaut und noch nicht fertig.`,
  changeIsJudged: ({ change, place }, say) =>
    `Eine Änderung nach der anderen: „${say.change(change)}“${at(place, say)} ist bewertet und noch nicht fertig.`,
  diagnosticInPlace: ({ change, place }, say) =>
    `Eine Änderung zur Fehlersuche ist noch eingebaut: „${say.change(change)}“${at(place, say)}. Bau sie zuerst zurück.`,
  faultNotSeenWithAnyMenu: () =>
    'Mit einem Menü im Bild wurde der Fehler noch nicht gesehen: ohne Vorkommen keine Antwort.',
  faultNotSeenWithMenu: ({ device }, say) =>
    `Mit dem Menü von ${say.place(device, 'dative')} wurde der Fehler nicht gesehen: ohne Vorkommen keine Antwort.`,
  menuContradicts: ({ device, stayed, vanished }, say) =>
    `An ${say.place(device, 'dative')} blieb das Menü ${say.times(stayed)} unberührt und war ${say.times(vanished)} mitbetroffen: Die Antworten widersprechen sich. Zieh die zurück, die falsch abgelesen war, oder lass die Beobachtung nicht zählen, die in die Irre führte.`,
  sidesContradict: ({ side, device, others }, say) =>
    `Ein Fehler ${say.side(side)} ${say.place(device, 'dative')} kann nicht auch dort liegen: ${say.and(others.map(say.message))}. Nichts in der Kette ist beides. Nimm die falsche Seite zurück, oder erklär die Beobachtung für ungültig, die in die Irre führte.`,
  sideOf: ({ side, device }, say) => `${say.side(side)} ${say.place(device, 'dative')}`,
  beforeLastRecorded: ({ moment, last }, say) =>
    `${say.moment(moment)} liegt vor dem, was zuletzt festgehalten wurde: ${say.moment(last)}. Nenne eine spätere Zeit; eine frühere Änderung wird als schon gemachte nachgetragen.`,
  watchBeganLater: ({ began }, say) =>
    `Die Beobachtung begann erst um ${say.moment(began)}: Nenne eine spätere Zeit. Was vorher kam, gehört in eine Notiz, weil niemand beobachtete.`,
  endBeforeSeen: ({ moment }, say) =>
    `${say.moment(moment)} liegt vor dem Beginn der Beobachtung, oder bevor der Fehler gesehen wurde: Nenne eine spätere Zeit, oder berichtige, wann er gesehen wurde.`,
  notInThisState: ({ command, state }, say) =>
    `„${say.term('command', command)}“ hat keinen Platz, solange das Ticket bei „${say.term('state', state)}“ ist.`,
  evidenceNotNow: () => 'Belege lassen sich jetzt nicht hinzufügen oder zurückziehen.',
  drawsNoMenu: ({ device }, say) => `${say.start(say.place(device))} zeichnet kein eigenes Menü.`,
  onNoWayToDisplay: ({ device }, say) =>
    `${say.start(say.place(device))} liegt auf keinem Weg von einer Quelle zu einer Anzeige.`,
  commandLabel: ({ command }, say) => say.start(say.term('command', command)),
  factLabel: ({ fact }, say) => say.start(say.term('fact', fact)),
};
