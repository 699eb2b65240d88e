import type { Pair } from './template.ts';

/** What a step of the triage is called where it is refused: the labels of state-machines/triage/*-rules.ts. */
export const labelPairs: readonly Pair[] = [
  [
    '‘{l:part}’ has no place while the ticket is in ‘{s:state}’.',
    '„{l}“ hat keinen Platz, solange das Ticket bei „{s}“ ist.',
  ],
  [
    'Say that you have looked at the audit of the chain',
    'Sagen, dass du die Prüfung der Kette durchgesehen hast',
  ],
  [
    'Write down what has changed since it last worked',
    'Aufschreiben, was sich änderte, seit es zuletzt ging',
  ],
  ['Record the chain as you found it', 'Kette festhalten, wie du sie vorgefunden hast'],
  ['Add a note', 'Notiz schreiben'],
  ['Correct the symptom', 'Symptom berichtigen'],
  [
    'Declare the one change you are about to make, and what you expect',
    'Die eine Änderung ansagen, die du machen willst, und was du erwartest',
  ],
  ['Withdraw the change: it was not made', 'Änderung zurücknehmen: Sie wurde nicht gemacht'],
  ['The change is made', 'Die Änderung ist gemacht'],
  ['Judge the retest', 'Nachtest bewerten'],
  [
    'The change is put back: the chain is as it was before',
    'Die Änderung ist zurückgebaut: Die Kette ist, wie sie war',
  ],
  ['The change stays as it is', 'Die Änderung bleibt, wie sie ist'],
  ['Name the culprit that a retest has shown', 'Die Ursache benennen, die ein Nachtest nachgewiesen hat'],
  ['Withdraw the culprit and go on looking', 'Ursache zurücknehmen und weitersuchen'],
  ['Hand the case to second line', 'Den Fall an die zweite Ebene geben'],
  ['Answer what second line asked for', 'Antworten, was die zweite Ebene gefragt hat'],
  ['Send second line a new version of the case', 'Der zweiten Ebene eine neue Fassung des Falls schicken'],
  ['Take the case back: nobody has taken it up yet', 'Den Fall zurückholen: Noch hat ihn niemand übernommen'],
  ['Add evidence', 'Beleg hinzufügen'],
  ['Withdraw an item of evidence', 'Beleg zurückziehen'],
  [
    'Withdraw an occurrence that was recorded by mistake',
    'Ein Vorkommen zurücknehmen, das aus Versehen festgehalten wurde',
  ],
  ['Confirm an occurrence that a log shows', 'Ein Vorkommen bestätigen, das ein Protokoll zeigt'],
  ['Settle on: no fault found', 'Festlegen: kein Fehler gefunden'],
  [
    'Settle on a repair, or on a workaround that the client accepts',
    'Eine Reparatur festlegen, oder einen Umweg, den der Kunde annimmt',
  ],
  ['Withdraw “no fault found” and watch on', '„Kein Fehler gefunden“ zurücknehmen und weiter beobachten'],
  ['Withdraw the remedy and settle on another', 'Abhilfe zurücknehmen und eine andere festlegen'],
  [
    'The remedy is done: record the chain as you leave it',
    'Die Abhilfe ist getan: Halte die Kette fest, wie du sie verlässt',
  ],
  ['Close the ticket', 'Ticket abschließen'],
  ['The fault came back: take it up again', 'Der Fehler kam wieder: Nimm es wieder auf'],
  ['Reopen the ticket', 'Ticket wieder öffnen'],
  ['Take the case', 'Fall übernehmen'],
  ['Ask the technician for more', 'Mehr von der Technik anfordern'],
  ['Direct a step and give the case back for it', 'Einen Schritt anweisen und den Fall dafür zurückgeben'],
  ['Accept the case with a finding', 'Den Fall mit einem Befund annehmen'],
  ['Hand the case back', 'Den Fall zurückgeben'],
  [
    'Conclude on which side of the device the fault lies',
    'Festlegen, auf welcher Seite des Geräts der Fehler liegt',
  ],
  ['Take back the side concluded at a device', 'Die Seite zurücknehmen, die an einem Gerät festgelegt ist'],
  [
    'Go on: change one thing at a time on that side',
    'Weiter: auf dieser Seite eine Sache nach der anderen ändern',
  ],
  ['Go back to finding the side', 'Zurück zum Finden der Seite'],
  // Said by its type where no one label fits.
  ['startWatch', 'Beobachtung beginnen'],
  ['Watch for the fault', 'Auf den Fehler warten'],
  [
    'Put up a device’s menu and watch whether it stays when the fault comes',
    'Das Menü eines Geräts zeigen und sehen, ob es bleibt, wenn der Fehler kommt',
  ],
  ['Watch again with the change in place', 'Mit der Änderung noch einmal beobachten'],
  [
    'Watch whether the fault is back now that the change was put back',
    'Beobachten, ob der Fehler wieder da ist, nun da die Änderung zurückgebaut ist',
  ],
  ['Watch whether the remedy holds', 'Beobachten, ob die Abhilfe hält'],
  ['The fault came', 'Der Fehler kam'],
  ['A try went well', 'Ein Versuch ging gut'],
  ['End the watch', 'Beobachtung beenden'],
  ['Go on: the fault was seen', 'Weiter: Der Fehler wurde gesehen'],
];
