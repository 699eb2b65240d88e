import type { stepCodes } from '../codes/steps.ts';
import type { Sentences } from '../sentences.ts';

export const stepsDe: Sentences<typeof stepCodes> = {
  beforeLooking: ({ todo }, say) => `Bevor du den Fehler suchst: ${say.and(todo.map(say.message))}.`,
  lookThroughAudit: () => 'sieh die Prüfung durch',
  askWhatChanged: () => 'frag, was sich geändert hat, seit es zuletzt ging',
  recordChainAsFound: () => 'halte die Kette fest, wie du sie vorgefunden hast',
  putRightFirst: ({ finding }, say) =>
    `${say.message(finding)} Das kommt in Ordnung, bevor etwas getauscht wird.`,
  worthKnowingFirst: ({ finding, whatToDo }, say) =>
    `Vor allem anderen gut zu wissen: ${say.message(finding)} ${say.message(whatToDo)}`,

  tooRareToWatch: ({ everyDays, watch, ways }, say) =>
    `Er kommt etwa einmal in ${say.number(everyDays, 1)} ${say.plural(everyDays, 'Tag', 'Tagen')} Gebrauch; vor Ort auf ihn zu warten würde ${say.lengthOfTime(watch)} dauern. Stattdessen, nach Minuten und Tagen: ${say.messages(ways)}`,
  reportedOftenEnough: ({ reports }) =>
    `Der Kunde hat ihn ${reports}-mal gemeldet. Gesehen hat ihn hier niemand, aber damit lässt sich weiterarbeiten, mit Abzug.`,
  wayOverDays: ({ way, minutes, days }, say) =>
    `${say.message(way)} (${say.lengthOfTime(minutes)} Arbeit${days < 0.05 ? '' : `, ${say.number(days, days < 10 ? 1 : 0)} Tage`}).`,
  wayDiary: () => 'Ein Tagebuch öffnen, in dem der Kunde tippt, wenn es passiert',
  wayLogs: () => 'Die Protokolle der Geräte holen und lesen',
  wayUnattended: () => 'Die Änderung zwischen Besuchen belassen, mit Tagebuch',
  wayRemote: () => 'Den Kunden eine sichere Änderung machen lassen, mit Tagebuch',
  wayVisit: () => 'Vor Ort darauf warten',
  leftInUntil: ({ until, owner }, say) =>
    `Die Änderung bleibt bis ${say.moment(until)}. Um ihre Tage zu beenden: Firmware noch einmal lesen, Protokolle der Geräte holen. Wer danach sieht: ${say.text(owner)}`,
  daysAreOver: () => 'Die Tage, in denen die Änderung belassen war, sind vorbei: Beurteile, was hereinkam.',
  watchAtToldRate: ({ minutes, sureness }, say) =>
    `Warte auf den Fehler, wie der Kunde ihn sieht, und fass nichts an. Bei der Häufigkeit, die der Kunde nennt, sollte er sich in ${say.minutesNeeded(minutes)} zeigen (${say.percent(sureness)}).`,
  watchAtAssumedRate: ({ everyMin, minutes, sureness }, say) =>
    `Warte auf den Fehler, wie der Kunde ihn sieht, und fass nichts an. Ist keine Häufigkeit genannt, gilt einmal in ${say.lengthOfTime(everyMin)} als angenommen; er sollte sich in ${say.minutesNeeded(minutes)} zeigen (${say.percent(sureness)}).`,
  wasNotAsTold: () =>
    'Er zeigte sich nicht so, wie der Kunde sagt. Vielleicht kommt und geht er: Sag das, dann wird er beobachtet. Oder leg dich fest auf „kein Fehler gefunden“.',
  itComesAndGoes: () => 'Er kommt und geht: das in den Angaben berichtigen',
  playWhatShowsIt: ({ kind, what }, say) =>
    `Spiel ab, womit er sich zeigt: ${say.term('onlyWith', kind)}${what === null ? '' : ` ${say.text(what)}`}.`,
  lookOnceForFault: () => 'Er soll immer da sein: Sieh einmal hin, und sag, ob er da ist.',
  tryWhatMakesItCome: ({ trigger, tries }, say) =>
    `Er kommt ${say.term('patternTrigger', trigger)}: Versuch genau das, und zähl jeden Versuch. Kommt er so, sollte er sich in ${tries} ${say.plural(tries, 'Versuch', 'Versuchen')} zeigen.`,
  tryWhatMayMakeItCome: ({ tries }, say) =>
    `Niemand weiß, wie er kommt: Versuch vor dem Warten, was solche Fehler oft auslöst. Schalt alles aus und ein, wechsle die Quelle, starte einen Titel, ändere das Format, und zähl jeden Versuch. ${say.plural(tries, 'Ein Versuch reicht', `${tries} Versuche reichen`)} noch.`,
  sayWhatMadeItCome: () => 'Wenn du gesehen hast, was ihn ausgelöst hat, sag es, bevor du weitermachst.',
  itCameBy: ({ trigger }, say) => `Er kam ${say.term('patternTrigger', trigger)}`,
  itCameByItself: () => 'Er kam von selbst, durch nichts, was versucht wurde',
  itIsAlwaysThere: () => 'Er ist die ganze Zeit da',
  tooRareToWaitFor: () => 'Er kommt zu selten, um bei einem Besuch auf ihn zu warten.',
  watchForBursts: () =>
    'Er kommt in Schüben: Beobachte lange genug für mehr als einen davon, jeder zählt einmal.',
  watchOnceWarm: ({ after }, say) =>
    after === null
      ? 'Er kommt nur, wenn alles warm ist: Beobachte vom Einschalten an, und halt fest, wie lange alles schon an ist.'
      : `Er kommt erst nach ${say.minutesNeeded(after)}: Sag, wie lange alles schon an ist, und beobachte, bis es lange genug warm war. Minuten davor zählen nicht.`,
  seenTryForMore: ({ seen, enough, moreTries, thenRetestTries, retestTries }, say) =>
    `${say.start(say.times(seen))} fehlgeschlagen. Versuch es weiter, bis es ${say.times(enough)} fehlschlug (noch etwa ${moreTries}): Jeder Nachtest braucht dann ${thenRetestTries} gute Versuche statt ${retestTries}.`,
  faultIsThere: () => 'Der Fehler ist da',
  faultThereMenuStayed: () => 'Der Fehler ist da, das Menü ist sauber',
  faultThereMenuVanished: () => 'Der Fehler ist da, das Menü hat ihn auch',
  faultIsNotThere: () => 'Der Fehler ist nicht da',
  lookAtRemedy: ({ looks }, say) =>
    `Sieh nach, ob die Abhilfe hält: ${say.plural(looks, 'ein guter Blick', `${looks} gute Blicke`)}, bevor es abgeschlossen werden kann.`,
  shouldHaveShown: () =>
    'Er hätte sich inzwischen zeigen sollen. Versuch, was ihn kommen lässt (Umschalten, Warmwerden, der Inhalt, den der Kunde nannte), oder leg dich fest auf „kein Fehler gefunden“.',
  seenWatchForMore: ({ seen, enough, moreMin, thenRetestMin, retestMin }, say) =>
    `${say.start(say.times(seen))} gesehen. Beobachte weiter, bis er ${say.times(enough)} gesehen wurde (noch etwa ${say.minutesNeeded(moreMin)}): Jeder ruhige Nachtest dauert dann ${say.minutesNeeded(thenRetestMin)} statt ${say.minutesNeeded(retestMin)}.`,
  faultReproduced: ({ seen }, say) =>
    `${say.start(say.times(seen))} gesehen: Der Fehler ist nachgestellt. Mach weiter und finde die Seite.`,

  menuUpWait: ({ place }, say) =>
    `Das Menü von ${say.place(place, 'dative')} steht: Warte auf den Fehler, dann sag, ob das Menü blieb, wie es war, oder mitbetroffen war. Ein Vorkommen genügt.`,
  menuUpSeen: ({ seen, place }, say) =>
    `${say.start(say.times(seen))} gesehen mit dem Menü von ${say.place(place, 'dative')}: Beende die Beobachtung und leg die Seite fest.`,
  concludeSideAt: ({ place }, say) =>
    `Leg die Seite an ${say.place(place, 'dative')} fest, nach dem, was du gesehen hast.`,
  noMenuToProveSide: () =>
    'Nichts in dieser Kette zeichnet ein eigenes Menü, also lässt sich hier keine Seite nachweisen: Gib den Fall mit dem Protokoll an die zweite Ebene.',
  sideInTheWay: ({ place, chance, within }, say) =>
    `Auf dieser Seite (${say.place(place)}) ist nichts mehr übrig, was seine Zeit wert ist, und nach allem, was seither zu sehen war, liegt der Fehler eher dort, wo sie ihn ausschloss (${say.percent(chance)} gegen ${say.percent(within)}). Nimm die Seite zurück und such dort weiter.`,
  takeSideBack: ({ place }, say) => `Die Seite zurücknehmen (${say.place(place)}) und weitersuchen`,
  proveSideFirst: ({ place }, say) =>
    `Weise die Seite nach, bevor etwas geändert wird: Ruf das Menü von ${say.place(place, 'dative')} auf und warte auf den Fehler.`,
  menuInstructions: () =>
    'Ruf das Menü mit der Fernbedienung auf und lass es im Bild stehen. Wenn der Fehler kommt, sieh auf das Menü: Bleibt es, wie es ist, oder ist es mitbetroffen: mit dem Bild weg, oder mit denselben Störungen darin?',
  menuAfterwards: () => 'Nimm das Menü danach wieder aus dem Bild.',
  sourceInstructions: () =>
    'Lass alles gesteckt, wie es ist, und spiel die andere Quelle mit Inhalt gleicher Art.',
  sourceAfterwards: () => 'Geh zurück zur üblichen Quelle.',

  byAllThatIsKnown: ({ place }, say) => `Nach allem, was bekannt ist, ist es ${say.place(place)}.`,
  proveByOneChange: ({ place, probability }, say) =>
    `Nach allem, was bekannt ist, ist es ${say.place(place)} (${say.percent(probability)}). Weise es durch eine Änderung nach.`,
  provesSuspect: ({ place }, say) =>
    `Es nimmt den Fehler weg, wenn es ${say.place(place)} ist, und kaum, wenn es etwas anderes ist.`,
  remediesInVain: ({ remedies }) =>
    `${remedies} Abhilfen haben nicht gehalten. Gib den Fall mit dem, was gefunden ist, an die zweite Ebene, oder mach weiter, wenn du weißt, warum.`,
  manyInVain: ({ changes }) =>
    `${changes} Änderungen haben nichts weggenommen: Der Fall ist nicht, wonach er aussieht. Gib ihn mit dem, was gefunden ist, an die zweite Ebene, oder mach weiter, wenn du weißt, warum.`,
  longInVain: ({ changes }, say) =>
    `${changes} ${say.plural(changes, 'Änderung ist', 'Änderungen sind')} versucht und beurteilt, mit vielen Beobachtungen, und es ist nicht gelöst. Gib den Fall mit dem, was gefunden ist, an die zweite Ebene, oder mach weiter, wenn du weißt, warum.`,
  culpritNamed: () =>
    'Die Ursache ist benannt. Leg eine Reparatur fest; oder einen Umweg, den der Kunde ausdrücklich annimmt.',
  settleOnRepair: () => 'Eine Reparatur festlegen',
  settleOnWorkaround: () => 'Einen Umweg festlegen, den der Kunde annimmt',
  closeAnyway: () => 'Trotzdem abschließen, mit Begründung',
  nameCulpritAt: ({ place }, say) => `Die Ursache benennen: ${say.place(place)}`,
  answerSecondLine: ({ question }, say) => `Der zweiten Ebene antworten: ${say.text(question)}`,
  doTheRepair: () =>
    'Mach die Reparatur, beschreib die Kette, wie du sie verlässt, und beobachte, ob es hält.',
  leaveAsItIs: () =>
    'Repariert wird nichts, denn es wurde nichts gefunden: Lass die Kette, wie sie war, und beschreib sie, wie du sie verlässt.',
  closeNoFaultFound: () =>
    'Der Fehler hat sich nicht gezeigt, obwohl Zeit genug war: Schließ das Ticket ab und sag dem Kunden, was er aufschreiben soll, wenn er wiederkommt.',
  cameAfterRemedy: () =>
    'Der Fehler kam nach der Abhilfe: Sag es, und such von vorn weiter mit dem, was jetzt bekannt ist.',
  remedyHeld: () => 'Die Abhilfe hat lang genug gehalten: Schließ das Ticket ab.',
  watchRemedyMinutes: ({ minutes }, say) =>
    `Beobachte, ob die Abhilfe hält: ${say.minutesNeeded(minutes)} ohne den Fehler, bevor es abgeschlossen werden kann.`,
  watchRemedyTries: ({ tries }, say) =>
    `Beobachte, ob die Abhilfe hält: ${tries} ${say.plural(tries, 'Versuch', 'Versuche')} hintereinander ohne den Fehler, bevor es abgeschlossen werden kann.`,
  remedyTooRareToWatch: () =>
    'Er kommt so selten, dass kein Besuch zeigt, ob die Abhilfe hält. Lass das Ticket auf Meldungen des Kunden warten; kommt keine, schließ es mit dieser Begründung ab.',
  watchRemedy: ({ how }, say) => `Beobachte, ob die Abhilfe hält: ${say.message(how)}`,

  changePerhapsRarer: ({ change, place, chance, minutes }, say) =>
    `Mit der Änderung (${say.change(change)}, ${say.place(place)}) kam der Fehler, aber vielleicht seltener: Es können zwei Fehler sein (${say.percent(chance)}). Beobachte noch ${say.minutesNeeded(minutes)}: Bleibt er aus, hat die Änderung einen von zweien weggenommen.`,
  changeMadeItRarer: ({ change, place, chance }, say) =>
    `Mit der Änderung (${say.change(change)}, ${say.place(place)}) kommt der Fehler noch, aber deutlich seltener: Vielleicht waren es zwei Fehler (${say.percent(chance)}). Lass sie bleiben und such den anderen, von einer eigenen Ausgangslage aus.`,
  changeMadeItRarerGoesBack: ({ change, place, chance }, say) =>
    `Mit der Änderung (${say.change(change)}, ${say.place(place)}) kommt der Fehler noch, aber deutlich seltener: Vielleicht sind es zwei Fehler (${say.percent(chance)}), und sie hat einen davon weggenommen. Sie kann nicht bleiben: Bau sie zurück. Was geändert wurde, bleibt fast so verdächtig wie vorher.`,
  keepAsOneOfTwo: () => 'Als einen von vielleicht zwei Fehlern bleiben lassen und den anderen suchen',
  perhapsTwoFaults: ({ chance, change, place }, say) =>
    `Vielleicht zwei Fehler (${say.percent(chance)}): Seit der Änderung (${say.change(change)}, ${say.place(place)}) kommt er seltener. In dieser Runde geht es um den anderen.`,

  clientChooses: () =>
    'Zeig dem Kunden die Wege mit ihren Minuten, Tagen und ihrer Sicherheit und schreib auf, was er wählt.',
  replaceOnSuspicionHere: ({ what }, say) => `Auf Verdacht reparieren, unbewiesen: ${say.message(what)}`,
  closeUnproven: () =>
    'Auf Verdacht repariert: Nichts hat es bewiesen. Prüf vor dem Gehen alles und schließ ab; in 14 Tagen wird der Kunde gefragt, ob es hält.',
  checkBeforeLeaving: () =>
    'Vor dem Gehen jede Quelle einmal an jeder Anzeige, den Ton und den üblichen Start probieren',
  waitForPart: ({ for: test }, say) =>
    `Das Ticket auf das warten lassen, was das braucht: ${say.message(test)}`,
  waitForReports: ({ until }, say) =>
    `Das Ticket bis ${say.moment(until)} auf das warten lassen, was der Kunde meldet`,
  waitForLogs: ({ until }, say) =>
    `Das Ticket bis ${say.moment(until)} auf die eigenen Protokolle der Geräte warten lassen: sie dann holen, anhängen und lesen, was sie zeigen`,
  ticketIsWaiting: ({ kind, what, actor, until }, say) =>
    `Das Ticket wartet bis ${say.moment(until)}. Auf: ${say.term('waitingKind', kind)}, ${say.text(what)}. Am Zug: ${say.term('actingParty', actor)}. Nimm die Arbeit wieder auf, sobald es so weit ist.`,
  secondLineAsks: ({ questions }, say) => `Die zweite Ebene fragt: ${questions.map(say.text).join('; ')}`,
  secondLineDirects: ({ step }, say) => `Die zweite Ebene sagt: ${say.text(step)}`,
  secondLineHandedBack: ({ reason }, say) =>
    `Die zweite Ebene hat den Fall zurückgegeben: ${say.text(reason)}`,
  everyQuestionAnswered: () => 'Jede Frage der zweiten Ebene hat ihre Antwort: Schick den Fall noch einmal.',
  secondLineHasCase: () =>
    'Der Fall ist bei der zweiten Ebene. Hier ist solange nichts zu tun; lass die Kette, wie sie ist.',
  ticketClosed: () => 'Das Ticket ist abgeschlossen.',
};
