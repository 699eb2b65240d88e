import type { ticketLogCodes } from '../codes/ticket-log.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

/** What somebody added in words of their own. */
const more = (text: string | null, say: Say): string => (text === null ? '' : ` ${say.text(text)}`);
const menuDid = (menu: Kinds['menu'] | null): string =>
  menu === null ? '' : menu === 'stayed' ? ', das Menü blieb, wie es war' : ', das Menü war mitbetroffen';

export const ticketLogDe: Sentences<typeof ticketLogCodes> = {
  'log/ticketOpened': () => 'Ticket eröffnet.',
  'log/takenFromTechnician': () => 'Der Technik wieder genommen.',
  'log/assignedToTechnician': () => 'Der Technik zugewiesen.',
  'log/takenOver': () => 'Übernommen.',
  'log/ticketUpdated': ({ priority, visit }, say) =>
    `Ticket geändert: Vorrang ${say.term('priority', priority)}, ${visit === null ? 'kein Termin' : `Termin ${say.moment(visit)}`}.`,
  'log/textErased': ({ texts, reason }, say) =>
    `Ein Text wurde gelöscht${say.plural(texts, '', `, an ${texts} Stellen`)}: ${say.text(reason)}`,
  'log/noteWritten': ({ text }, say) => `Notiz: ${say.text(text)}`,
  'log/symptomCorrected': ({ symptom }, say) => `Symptom berichtigt: ${say.term('symptom', symptom)}.`,
  'log/symptomAmended': ({ symptom, told }, say) =>
    `Symptom berichtigt: ${say.term('symptom', symptom)}. ${told.map((one) => `${say.message(one)}.`).join(' ')}`,
  'log/auditReviewed': ({ version, mustFix, shouldFix, note }, say) =>
    `Prüfung der Kettenfassung ${version} durchgesehen: ${mustFix} zu beheben, ${shouldFix}, die es sein sollten.${more(note, say)}`,
  'log/whatChangedAnswered': ({ answers }, say) =>
    `Was sich änderte: ${answers.map(say.message).join('; ')}.`,
  'log/changedBefore': ({ what, text }, say) => `${say.term('whatChanged', what)}${more(text, say)}`,
  'log/asFoundRecorded': ({ version }) => `Wie vorgefunden: Kettenfassung ${version}.`,
  'log/watchStarted': ({ planned, trigger, byTrigger, menuOf }, say) =>
    `Beobachtung begonnen${byTrigger ? `, mit Umschalten (${trigger === null ? 'Auslöser nicht genannt' : say.text(trigger)})` : ''}${planned === null ? '' : `, ${say.minutesNeeded(planned)} geplant`}${menuOf === null ? '' : `, mit dem Menü von ${say.place(menuOf, 'dative')}`}.`,
  'log/lookStarted': ({ menuOf }, say) =>
    `Ein Blick auf den Fehler${menuOf === null ? '' : `, mit dem Menü von ${say.place(menuOf, 'dative')}`}.`,
  'log/triesStarted': ({ trigger, menuOf }, say) =>
    `Versuche begonnen, ob er ${say.term('patternTrigger', trigger)} kommt${menuOf === null ? '' : `, mit dem Menü von ${say.place(menuOf, 'dative')}`}.`,
  'log/faultCame': ({ lasted, menu, description }, say) =>
    `Der Fehler kam${lasted === null ? '' : `, für ${say.number(lasted)} s`}${menuDid(menu)}.${more(description, say)}`,
  'log/faultConfirmedByLog': ({ at, menu, description }, say) =>
    `Ein Protokoll zeigt, dass der Fehler um ${say.moment(at)} kam${menuDid(menu)}: bestätigt.${more(description, say)}`,
  'log/loggedWasNone': ({ at }, say) => `Was ein Protokoll um ${say.moment(at)} zeigt, war nicht der Fehler.`,
  'log/loggedOpenAgain': ({ at }, say) => `Was ein Protokoll um ${say.moment(at)} zeigt, ist wieder offen.`,
  'log/tryWentWell': () => 'Ein Versuch ohne den Fehler.',
  'log/occurrenceWithdrawn': ({ reason }, say) => `Ein Vorkommen wurde zurückgenommen: ${say.text(reason)}`,
  'log/occurrenceMoved': ({ at, reason }, say) =>
    `Der Fehler kam zu einer anderen Zeit, ${say.moment(at)}: ${say.text(reason)}`,
  'log/watchVoided': ({ reason }, say) => `Eine Beobachtung zählt nicht mehr: ${say.text(reason)}`,
  'log/watchEnded': () => 'Beobachtung beendet.',
  'log/faultReproduced': () => 'Der Fehler ist nachgestellt.',
  'log/sideConcluded': ({ device, side }, say) =>
    `Seite festgelegt an ${say.place(device, 'dative')}: Der Fehler liegt ${say.side(side)} diesem Gerät.`,
  'log/sideWithdrawn': ({ device, reason }, say) =>
    `Die Seite an ${say.place(device, 'dative')} wurde zurückgenommen: ${say.text(reason)}`,
  'log/substitutionBegun': () => 'Das Tauschen beginnt.',
  'log/backToSide': ({ reason }, say) => `Zurück zum Finden der Seite: ${say.text(reason)}`,
  'log/changeDeclared': ({ change, place, expected, detail }, say) =>
    `Änderung angesagt: ${say.change(change)}, ${say.place(place)}. Erwartet: ${say.text(expected)}${more(detail, say)}`,
  'log/lateChangeEntered': ({ change, place, madeAt, madeBy, seen }, say) =>
    `Nachgetragen: ${say.change(change)}, ${say.place(place)}, gemacht um ${say.moment(madeAt)} von ${say.text(madeBy)}. ${say.term('lateFinding', seen)}.`,
  'log/changeWithdrawn': ({ reason }, say) =>
    `Die angesagte Änderung wurde zurückgenommen: ${say.text(reason)}`,
  'log/changeInPlace': () => 'Die Änderung ist eingebaut.',
  'log/retestJudged': ({ verdict }, say) =>
    `Nachtest nach der Beobachtung bewertet: ${say.verdict(verdict)}.`,
  'log/retestJudgedByHand': ({ verdict, reason }, say) =>
    `Nachtest selbst bewertet, ${say.verdict(verdict)}: ${say.text(reason)}`,
  'log/changePutBack': ({ note }, say) => `Die Änderung wurde zurückgebaut.${more(note, say)}`,
  'log/changeKeptAsOneOfTwo': ({ chance, note }, say) =>
    `Die Änderung bleibt: vielleicht einer von zwei Fehlern (${say.percent(chance)}). Der andere wird in einer neuen Runde gesucht.${more(note, say)}`,
  'log/changeKept': ({ note }, say) => `Die Änderung bleibt.${more(note, say)}`,
  'log/culpritNamed': ({ place, explanation }, say) =>
    `Ursache: ${say.place(place)}. ${say.text(explanation)}`,
  'log/culpritWithdrawn': ({ reason }, say) => `Die Ursache wurde zurückgenommen: ${say.text(reason)}`,
  'log/repairChosen': ({ what }, say) => `Abhilfe, eine dauerhafte Reparatur: ${say.text(what)}`,
  'log/workaroundChosen': ({ what }, say) => `Abhilfe, ein Umweg, den der Kunde annimmt: ${say.text(what)}`,
  'log/noFaultFoundChosen': ({ what }, say) =>
    `Festgelegt, dass kein Fehler gefunden wurde: ${say.text(what)}`,
  'log/remedyWithdrawn': ({ reason }, say) => `Die Abhilfe wurde zurückgenommen: ${say.text(reason)}`,
  'log/remedyFinished': ({ version }) => `Die Abhilfe ist getan. Wie verlassen: Kettenfassung ${version}.`,
  'log/partsInstalled': ({ version, places }, say) =>
    `Die Abhilfe ist getan, mit einem anderen Teil an dieser Stelle: ${say.and(places.map((place) => say.place(place)))}. Wie verlassen: Kettenfassung ${version}.`,
  'log/faultIsBack': ({ reason }, say) => `Der Fehler kam wieder: ${say.text(reason)}`,
  'log/closed': ({ note }, say) => `Abgeschlossen.${more(note, say)}`,
  'log/closedWithLess': ({ reason, note }, say) =>
    `Abgeschlossen mit weniger als der vollen Beobachtung: ${say.text(reason)}${more(note, say)}`,
  'log/reopened': ({ reason }, say) => `Wieder geöffnet: ${say.text(reason)}`,
  'log/clientChose': ({ way, chosenBy }, say) =>
    `Der Kunde hat gewählt (${say.text(chosenBy)}): ${say.term('choiceWay', way)}.`,
  'log/replacedOnSuspicion': ({ what, place, chance }, say) =>
    `Auf Verdacht repariert, unbewiesen: ${say.text(what)}, ${say.place(place)} (Chance ${say.percent(chance)}).`,
  'log/askedAfterRepair': ({ heard, again, note }, say) =>
    `Der Kunde wurde gefragt, ob die Reparatur hält: ${say.term('followUpOutcome', heard)}.${again === null ? '' : ` Wieder zu fragen bis ${say.moment(again)}.`}${more(note, say)}`,
  'log/checkedBeforeLeaving': ({ work, fail, notChecked, sound, usualStart, note }, say) =>
    `Vor dem Gehen: Von den Quellen an den Anzeigen gehen ${work}, ${fail} gehen nicht, ${notChecked} nicht geprüft. Ton: ${say.term('checkAnswer', sound)}. Üblicher Start: ${say.term('checkAnswer', usualStart)}.${more(note, say)}`,
  'log/waits': ({ kind, what, actor, until }, say) =>
    `Das Ticket wartet bis ${say.moment(until)}. Auf: ${say.term('waitingKind', kind)}, ${say.text(what)}. Am Zug: ${say.term('actingParty', actor)}.`,
  'log/workResumed': ({ note }, say) => `Die Arbeit geht weiter.${more(note, say)}`,
  'log/toSecondLine': ({ question }, say) => `An die zweite Ebene: ${say.text(question)}`,
  'log/answeredSecondLine': ({ text }, say) => `Antwort an die zweite Ebene: ${say.text(text)}`,
  'log/toSecondLineAgain': ({ question }, say) => `Noch einmal an die zweite Ebene.${more(question, say)}`,
  'log/recalled': ({ reason }, say) => `Von der zweiten Ebene zurückgeholt: ${say.text(reason)}`,
  'log/caseTaken': () => 'Die zweite Ebene hat den Fall übernommen.',
  'log/askedForMore': ({ requests }, say) => `Die zweite Ebene fragt: ${requests.map(say.text).join('; ')}`,
  'log/stepDirected': ({ text }, say) => `Die zweite Ebene weist einen Schritt an: ${say.text(text)}`,
  'log/caseAccepted': ({ finding }, say) =>
    `Die zweite Ebene nimmt den Fall an. Befund: ${say.text(finding)}`,
  'log/caseHandedBack': ({ reason }, say) => `Die zweite Ebene gibt den Fall zurück: ${say.text(reason)}`,
  'log/figuresChanged': () =>
    'Die Zahlen des Betriebs haben sich geändert: nach den neuen wird ab hier entschieden.',
  'log/reproductionRevised': () => 'Nichts zeigt den Fehler mehr: er muss wieder gesehen werden.',
  'log/sideRevised': ({ device, side }, say) =>
    `Berichtigt: Von ${say.place(device, 'dative')} aus gesehen liegt der Fehler ${say.side(side)} diesem Gerät.`,
  'log/sideFell': ({ device }, say) =>
    `Berichtigt: Die Beobachtungen an ${say.place(device, 'dative')} zeigen die Seite nicht mehr.`,
  'log/judgementRevised': ({ verdict }, say) => `Berichtigt: Der Nachtest sagt ${say.verdict(verdict)}.`,
  'log/judgementFell': () => 'Berichtigt: Der Nachtest sagt nichts mehr und muss neu gemacht werden.',
  'log/culpritRevised': () => 'Berichtigt: Nichts zeigt die Ursache mehr.',
  'log/remedyRevised': () => 'Berichtigt: „Kein Fehler gefunden“ gilt nicht mehr.',
  'log/evidenceAdded': ({ kind }, say) => `Beleg hinzugefügt: ${say.term('evidenceKind', kind)}.`,
  'log/evidenceWithdrawn': ({ reason }, say) => `Beleg zurückgezogen: ${say.text(reason)}`,
  'log/diaryOpened': ({ until }, say) =>
    `Für den Kunden wurde ein Tagebuch geöffnet, bis ${say.moment(until)}.`,
  'log/diaryClosed': () => 'Das Tagebuch des Kunden wurde geschlossen.',
  'log/occurrenceReported': ({ at }, say) =>
    `Der Kunde meldet, dass der Fehler kam: ${say.moment(at)}. Am Auftrag hat ihn niemand gesehen.`,
  'log/reportDeleted': () => 'Der Kunde hat gemeldet, dass der Fehler kam, und das seitdem gelöscht.',
  'log/reportAnswered': () => 'Der Kunde hat zu seiner Meldung mehr gesagt.',
  'log/reportWithdrawn': ({ reason }, say) => `Eine Meldung des Kunden zählt nicht: ${say.text(reason)}`,
  'log/leftInPlace': ({ until, owner }, say) =>
    `Die Änderung bleibt bis ${say.moment(until)}, mit dem Ja des Kunden. Wer danach sieht: ${say.text(owner)}`,
  'log/unattendedEnded': ({ logged }) =>
    logged === 0
      ? 'Die Tage, in denen die Änderung belassen war, sind vorbei. Kein Protokoll zeigt den Fehler darin.'
      : `Die Tage, in denen die Änderung belassen war, sind vorbei. Protokolle zeigen den Fehler darin ${logged}-mal.`,
  'log/reportsErased': ({ reports }, say) =>
    `Der Kunde hat gelöscht, was er gesendet hatte: ${reports} ${say.plural(reports, 'Meldung', 'Meldungen')}.`,
  'log/eventOfLaterVersion': ({ type }) => `Ein Ereignis, das diese Version nicht kennt: ${type}.`,
  'log/chainChanged': ({ changes }, say) => `Die Kette wurde geändert. ${say.messages(changes)}`,
  'log/packetMade': ({ version }) => `Fallpaket, Fassung ${version}.`,
};
