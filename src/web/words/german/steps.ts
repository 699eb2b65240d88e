import type { Pair } from './template.ts';

/** What a ticket asks for next, and what second line would miss: state-machines/planning, triage/completeness.ts. */
export const stepPairs: readonly Pair[] = [
  // early-steps.ts
  ['Before looking for the fault, {l:parts}.', 'Bevor du den Fehler suchst: {l}.'],
  ['look through the audit', 'sieh die Prüfung durch'],
  ['ask what has changed since it last worked', 'frag, was sich geändert hat, seit es zuletzt ging'],
  ['record the chain as you found it', 'halte die Kette fest, wie du sie vorgefunden hast'],
  ['Worth knowing before anything else: {t:part}', 'Vor allem anderen gut zu wissen: {t}'],
  [
    'Watch for the fault as the client sees it, and touch nothing.',
    'Warte auf den Fehler, wie der Kunde ihn sieht, und fass nichts an.',
  ],
  [
    'With no rate told, one in two hours is assumed, it should show within {m:min} ({p:pct}).',
    'Ist keine Häufigkeit genannt, gilt einmal in zwei Stunden als angenommen; er sollte sich in {m} zeigen ({p}).',
  ],
  [
    'At the rate the client tells, it should show within {m:min} ({p:pct}).',
    'Bei der Häufigkeit, die der Kunde nennt, sollte er sich in {m} zeigen ({p}).',
  ],
  ['It should have shown by now.', 'Er hätte sich inzwischen zeigen sollen.'],
  [
    'Try what makes it come (switching, warming up, the content the client named), or settle on “no fault found”.',
    'Versuch, was ihn kommen lässt (Umschalten, Warmwerden, der Inhalt, den der Kunde nannte), oder leg dich fest auf „kein Fehler gefunden“.',
  ],
  ['Seen {n:times}.', '{n} gesehen.'],
  [
    'Watch on until it was seen {n:times} (about {m:min} more): every quiet retest then takes {a:min} instead of {b:min}.',
    'Beobachte weiter, bis er {n} gesehen wurde (noch etwa {m}): Jeder ruhige Nachtest dauert dann {a} statt {b}.',
  ],
  ['Seen {n:times}: the fault is reproduced.', '{n} gesehen: Der Fehler ist nachgestellt.'],
  ['Go on and find the side.', 'Mach weiter und finde die Seite.'],
  [
    'The menu of {x:place} is up: wait for the fault, then say whether the menu stayed or vanished.',
    'Das Menü von {x.dat} steht: Warte auf den Fehler, dann sag, ob das Menü blieb oder verschwand.',
  ],
  ['One occurrence answers.', 'Ein Vorkommen genügt.'],
  [
    'Seen {n:times} with the menu of {x:place} up: end the watch and conclude the side.',
    '{n} gesehen mit dem Menü von {x.dat}: Beende die Beobachtung und leg die Seite fest.',
  ],
  [
    'Conclude the side at {x:place} from what you saw.',
    'Leg die Seite an {x.dat} fest, nach dem, was du gesehen hast.',
  ],

  // change-steps.ts
  ['‘{c:part}’, {x:place}: {t:part}', '„{c}“, {x}: {t}'],
  [
    '‘{c:part}’, {x:place} is in place and the fault still comes: judge it and put it back.',
    '„{c}“, {x}, ist eingebaut, und der Fehler kommt noch: Bewerte es und bau es zurück.',
  ],
  [
    '‘{c:part}’, {x:place} is in place and it was quiet long enough: end the watch and judge.',
    '„{c}“, {x}, ist eingebaut, und es war lang genug ruhig: Beende die Beobachtung und bewerte.',
  ],
  ['‘{c:part}’, {x:place} is in place.', '„{c}“, {x}, ist eingebaut.'],
  ['Watch: {t:part}', 'Beobachte: {t}'],
  ['{m:min} without the fault to call it cleared.', '{m} ohne den Fehler, um es behoben zu nennen.'],
  [
    '{n:num} tries in a row without the fault to call it cleared.',
    '{n} Versuche hintereinander ohne den Fehler, um es behoben zu nennen.',
  ],
  ['‘{c:part}’, {x:place} cleared the fault.', '„{c}“, {x}: Das hat den Fehler behoben.'],
  ['‘{c:part}’, {x:place} did not clear the fault.', '„{c}“, {x}: Das hat den Fehler nicht behoben.'],
  ['‘{c:part}’, {x:place} says nothing yet.', '„{c}“, {x}: Das sagt noch nichts.'],
  [
    'With everything as it was, the fault is back: ‘{c:part}’ at {x:place} is what takes it away.',
    'Alles ist, wie es war, und der Fehler ist wieder da: Was ihn wegnimmt, ist „{c}“, {x}.',
  ],
  [
    '‘{c:part}’ at {x:place} cleared it, and everything is as it was.',
    '„{c}“, {x}, hat ihn behoben, und alles ist, wie es war.',
  ],
  [
    'Watch until the fault returns: it came every {m:min} before.',
    'Beobachte, bis der Fehler wiederkommt: Vorher kam er alle {m}.',
  ],
  ['Watch until the fault returns.', 'Beobachte, bis der Fehler wiederkommt.'],
  ['Only then is it shown.', 'Erst dann ist es nachgewiesen.'],
  [
    'The fault came after the remedy: say so, and look on from the start with what is known now.',
    'Der Fehler kam nach der Abhilfe: Sag es, und such von vorn weiter mit dem, was jetzt bekannt ist.',
  ],
  [
    'The remedy has held long enough: close the ticket.',
    'Die Abhilfe hat lang genug gehalten: Schließ das Ticket ab.',
  ],
  ['Watch whether the remedy holds: {t:part}', 'Beobachte, ob die Abhilfe hält: {t}'],
  [
    '{m:min} without the fault before it can be closed.',
    '{m} ohne den Fehler, bevor es abgeschlossen werden kann.',
  ],
  [
    '{n:num} tries in a row without the fault before it can be closed.',
    '{n} Versuche hintereinander ohne den Fehler, bevor es abgeschlossen werden kann.',
  ],

  // step.ts
  ['The culprit is named.', 'Die Ursache ist benannt.'],
  [
    'Settle on a repair; or on a workaround that the client accepts in so many words.',
    'Leg eine Reparatur fest; oder einen Umweg, den der Kunde ausdrücklich annimmt.',
  ],
  [
    'Do the repair, describe the chain as you leave it, and watch whether it holds.',
    'Mach die Reparatur, beschreib die Kette, wie du sie verlässt, und beobachte, ob es hält.',
  ],
  ['The ticket is closed.', 'Das Ticket ist abgeschlossen.'],
  ['Second line asks: {t:raw}', 'Die zweite Ebene fragt: {t}'],
  [
    'Every question of second line has its answer: send the case again.',
    'Jede Frage der zweiten Ebene hat ihre Antwort: Schick den Fall noch einmal.',
  ],
  ['Second line has the case.', 'Der Fall ist bei der zweiten Ebene.'],
  [
    'Nothing has to be done here meanwhile; leave the chain as it is.',
    'Hier ist solange nichts zu tun; lass die Kette, wie sie ist.',
  ],

  // ticket-plan.ts
  [
    'It takes the fault away if it is {x:place}, and hardly if it is anything else.',
    'Es nimmt den Fehler weg, wenn es {x} ist, und kaum, wenn es etwas anderes ist.',
  ],
  ['By all that is known it is {x:place} ({p:pct}).', 'Nach allem, was bekannt ist, ist es {x} ({p}).'],
  ['By all that is known it is {x:place}.', 'Nach allem, was bekannt ist, ist es {x}.'],
  ['Prove it by one change.', 'Weise es durch eine Änderung nach.'],
  [
    'Nothing in this chain draws a menu of its own, so no side can be proven here: hand the case to second line with the record.',
    'Nichts in dieser Kette zeichnet ein eigenes Menü, also lässt sich hier keine Seite nachweisen: Gib den Fall mit dem Protokoll an die zweite Ebene.',
  ],
  [
    'Prove the side before anything is changed: put up the menu of {x:place} and wait for the fault.',
    'Weise die Seite nach, bevor etwas geändert wird: Ruf das Menü von {x.dat} auf und warte auf den Fehler.',
  ],

  // triage/completeness.ts
  ['The audit of the chain was not looked at.', 'Die Prüfung der Kette wurde nicht durchgesehen.'],
  [
    'It was not asked what has changed since it last worked.',
    'Es wurde nicht gefragt, was sich geändert hat, seit es zuletzt ging.',
  ],
  [
    'No watch has seen the fault before a change was made.',
    'Keine Beobachtung hat den Fehler gesehen, bevor etwas geändert wurde.',
  ],
  [
    'No change has a retest that is long enough, and can be put down to it, to mean something.',
    'Keine Änderung hat einen Nachtest, der lang genug ist und sich ihr zuschreiben lässt, sodass er etwas sagt.',
  ],
  [
    'The chain as found is not recorded, so no firmware level is known.',
    'Die Kette ist nicht festgehalten wie vorgefunden, also ist kein Firmware-Stand bekannt.',
  ],
  ['The firmware level of {x:place} is not known.', 'Der Firmware-Stand von {x.dat} ist nicht bekannt.'],
  ['No settings were read out of any device.', 'Aus keinem Gerät wurden Einstellungen gelesen.'],
  ['The settings of {x:place} are not known.', 'Die Einstellungen von {x.dat} sind nicht bekannt.'],
  [
    'There are no photos of both ends of the suspect cable and its printed label.',
    'Es gibt keine Fotos von beiden Enden des verdächtigen Kabels und seinem Aufdruck.',
  ],
  ['Photos of {x:place} are missing: {l:parts}.', 'Fotos fehlen von {x.dat}: {l}.'],
  ['its source end', 'das Quellenende'],
  ['its other end', 'das andere Ende'],
  ['its printed label', 'der Aufdruck'],
  [
    'The EDID at the input of {x:place} was not read.',
    'Das EDID am Eingang von {x.dat} wurde nicht gelesen.',
  ],
  [
    'No log covers a moment at which the fault was seen.',
    'Kein Protokoll deckt einen Moment ab, in dem der Fehler gesehen wurde.',
  ],
  // triage/side-rules.ts, segment.ts
  [
    'No side is known yet: watch with a device’s menu up, and conclude.',
    'Noch ist keine Seite bekannt: Beobachte mit dem Menü eines Geräts und leg sie fest.',
  ],
  [
    'The fault was not seen with the menu of {x:place} up: no occurrence, no answer.',
    'Der Fehler wurde nicht gesehen, während das Menü von {x.dat} stand: kein Vorkommen, keine Antwort.',
  ],
  [
    'The fault was not seen with a menu up yet: no occurrence, no answer.',
    'Der Fehler wurde noch nicht mit einem Menü im Bild gesehen: kein Vorkommen, keine Antwort.',
  ],
  [
    'At {x:place} the menu stayed {a:times} and vanished {b:times}: the answers contradict each other.',
    'An {x.dat} blieb das Menü {a} und verschwand {b}: Die Antworten widersprechen sich.',
  ],
  ['{x:place} draws no menu of its own.', '{x} zeichnet kein eigenes Menü.'],
  [
    '{x:place} is on no way from a source to a display.',
    '{x} liegt auf keinem Weg von einer Quelle zu einer Anzeige.',
  ],
];
