import type { Pair } from './template.ts';

/** Why a step of the triage is refused: state-machines/triage. Labels of roles and states stay as the machine has them. */
export const refusalPairs: readonly Pair[] = [
  // applicable-changes.ts, change-places.ts
  [
    'No side is known yet, so it can’t be said what is worth changing.',
    'Noch ist keine Seite bekannt, also lässt sich nicht sagen, was zu ändern lohnt.',
  ],
  [
    'That was done and kept: it is part of the chain now.',
    'Das wurde gemacht und behalten: Es gehört jetzt zur Kette.',
  ],
  [
    'The chain as found has nothing under that id.',
    'In der Kette wie vorgefunden gibt es nichts unter dieser Kennung.',
  ],
  [
    'An update can’t be undone, so it comes last: ‘{c:part}’ at {x:place} is still untried.',
    'Ein Update lässt sich nicht rückgängig machen, also kommt es zuletzt: „{c}“, {x}, ist noch nicht versucht.',
  ],
  [
    'It can’t be at fault any more: it lies on the other side.',
    'Daran kann es nicht mehr liegen: Es liegt auf der anderen Seite.',
  ],
  ['That is done at a {a:roles}, not at a {b:role}.', 'Das gehört zur Rolle {a}, nicht zur Rolle {b}.'],
  ['Nothing is plugged into an {d:direction} of it.', 'Kein {d} davon ist belegt.'],
  [
    'Its {d:direction} passes no more than {n:num} Gbit/s as it is.',
    'Der {d} lässt schon jetzt nicht mehr als {n} Gbit/s durch.',
  ],
  [
    'It lies in the wall: bridge it with a temporary cable instead.',
    'Es liegt in der Wand: Überbrück es stattdessen mit einem vorübergehenden Kabel.',
  ],
  ['It is short and lies free: replace it instead.', 'Es ist kurz und liegt frei: Ersetz es stattdessen.'],
  ['There is no parallel branch beside it.', 'Daneben gibt es keinen parallelen Zweig.'],
  ['The picture that is watched comes through it.', 'Das beobachtete Bild läuft hindurch.'],
  ['It has no other free {d:direction}.', 'Dort ist kein anderer {d} frei.'],
  [
    'Its mode isn’t set: it is on automatic or can’t be set.',
    'Die Betriebsart ist nicht eingestellt: Sie steht auf automatisch oder lässt sich nicht einstellen.',
  ],
  ['It is set to the highest mode it has.', 'Die höchste Betriebsart ist schon eingestellt.'],
  ['Nothing is plugged into it.', 'Dort steckt nichts.'],
  ['No processor follows it.', 'Dahinter kommt kein Prozessor.'],
  ['It goes straight into the processor as it is.', 'Es geht schon jetzt direkt in den Prozessor.'],
  ['A {r:role} can’t be bypassed.', 'Das lässt sich nicht umgehen: {r}.'],
  ['It has no signal both in and out.', 'Dort geht kein Signal hinein und wieder hinaus.'],
  [
    'It neither processes the picture nor manages EDID as it is set.',
    'So, wie es eingestellt ist, verarbeitet es weder das Bild noch verwaltet es das EDID.',
  ],
  ['No display follows it.', 'Dahinter kommt keine Anzeige.'],
  [
    'It is joined to the display by no more than {n:num} m as it is.',
    'Schon jetzt liegen nicht mehr als {n} m bis zur Anzeige.',
  ],
  ['No earlier settings of it are known.', 'Frühere Einstellungen sind nicht bekannt.'],

  // baseline-rules.ts, watch-rules.ts, occurrence-rules.ts, timing.ts
  [
    'A change is open: the chain is not as found.',
    'Eine Änderung ist offen: Die Kette ist nicht wie vorgefunden.',
  ],
  [
    'A side was concluded on the chain as recorded: take that back first.',
    'Für die Kette wie festgehalten wurde eine Seite festgelegt: Nimm das zuerst zurück.',
  ],
  ['Record the chain as found first.', 'Halte zuerst die Kette fest wie vorgefunden.'],
  ['There is {w:thing} under that id.', 'Unter dieser Kennung gibt es schon {w}.'],
  ['There is no {w:lack} under that id.', 'Unter dieser Kennung gibt es {w}.'],
  [
    "There is no device '{d:raw}' in the chain as found.",
    'In der Kette wie vorgefunden gibt es kein Gerät „{d}“.',
  ],
  [
    'Say what makes the fault come: each try is one such switching.',
    'Sag, was den Fehler kommen lässt: Jeder Versuch ist einmal dieses Schalten.',
  ],
  ['Say which device’s menu is up.', 'Sag, das Menü welches Geräts im Bild steht.'],
  ['No change is in place.', 'Keine Änderung ist eingebaut.'],
  [
    'The retest was judged: put the change back or keep it.',
    'Der Nachtest ist bewertet: Bau die Änderung zurück oder behalte sie.',
  ],
  [
    'There is nothing to confirm: no change that cleared the fault was put back.',
    'Es gibt nichts zu bestätigen: Keine Änderung, die den Fehler behob, wurde zurückgebaut.',
  ],
  ['No watch is running: start one first.', 'Keine Beobachtung läuft: Beginn zuerst eine.'],
  ['A watch is running: end it first.', 'Eine Beobachtung läuft: Beende sie zuerst.'],
  [
    'Did the menu stay in the picture, or did it vanish too?',
    'Blieb das Menü im Bild, oder verschwand es auch?',
  ],
  ['The watch began only at {t:raw}.', 'Die Beobachtung begann erst um {t}.'],
  [
    'This watch counts time, not tries: start one with a trigger.',
    'Diese Beobachtung zählt Zeit, nicht Versuche: Beginn eine mit einem Auslöser.',
  ],
  [
    '{t:raw} is before the watch began, or before the fault was seen.',
    '{t} liegt vor dem Beginn der Beobachtung, oder bevor der Fehler gesehen wurde.',
  ],
  [
    'The fault was not seen yet: keep watching, or try another trigger.',
    'Der Fehler wurde noch nicht gesehen: Beobachte weiter, oder versuch einen anderen Auslöser.',
  ],
  [
    '{t:raw} is before what was recorded last, {u:raw}.',
    '{t} liegt vor dem, was zuletzt festgehalten wurde: {u}.',
  ],
  [
    '{t:raw} is still to come: check the phone’s clock.',
    '{t} liegt noch in der Zukunft: Prüf die Uhr des Telefons.',
  ],
  [
    '{t:raw} is before the ticket was opened: check the phone’s clock.',
    '{t} liegt vor der Eröffnung des Tickets: Prüf die Uhr des Telefons.',
  ],
  ['That occurrence was withdrawn already.', 'Dieses Vorkommen wurde schon zurückgenommen.'],
  ['There is no occurrence to withdraw.', 'Es gibt kein Vorkommen zurückzunehmen.'],
  ['{w:part} rests on this occurrence.', '{w} stützt sich auf dieses Vorkommen.'],
  [
    'The side concluded at {d:raw}, which has to be taken back first,',
    'Die Seite, die an {d} festgelegt wurde und zuerst zurückgenommen werden muss,',
  ],
  [
    'The verdict on a change, which can be overridden with a reason,',
    'Das Urteil über eine Änderung, das du mit einem Grund überstimmen kannst,',
  ],
  ['The confirmation of the culprit', 'Die Bestätigung der Ursache'],
  [
    'That watch is still running: record what you see.',
    'Diese Beobachtung läuft noch: Halte fest, was du siehst.',
  ],
  [
    'In a watch by tries each try was judged when it was made.',
    'In einer Beobachtung mit Versuchen wurde jeder Versuch gleich beurteilt.',
  ],
  ['That watch belongs to an earlier round.', 'Diese Beobachtung gehört zu einer früheren Runde.'],
  [
    'The change was judged on that watch: judge it again by hand and give the log as the reason.',
    'Nach dieser Beobachtung wurde die Änderung bewertet: Bewerte sie selbst neu und nenn das Protokoll als Grund.',
  ],
  ['The watch went from {a:raw} to {b:raw}.', 'Die Beobachtung ging von {a} bis {b}.'],
  ['That occurrence is recorded already.', 'Dieses Vorkommen ist schon festgehalten.'],
  [
    'That contradicts the side concluded there: take the side back first.',
    'Das widerspricht der Seite, die dort festgelegt ist: Nimm zuerst die Seite zurück.',
  ],
  [
    'That takes a watch that has ended and a log.',
    'Das braucht eine beendete Beobachtung und ein Protokoll.',
  ],

  ['This is for: {r:members}.', 'Das ist Sache von: {r}.'],
  ['You are signed in as {m:member}.', 'Du bist angemeldet als: {m}.'],

  // rule.ts, change-rules.ts, side-rules.ts
  ['The ticket is closed: reopen it first.', 'Das Ticket ist abgeschlossen: Öffne es zuerst wieder.'],
  [
    'A diagnostic change is still in place: ‘{c:part}’ at {x:place}. Put it back first.',
    'Eine Änderung zur Fehlersuche ist noch eingebaut: „{c}“, {x}. Bau sie zuerst zurück.',
  ],
  [
    'One change at a time: ‘{c:part}’ at {x:place} is {s:status} and not finished yet.',
    'Eine Änderung nach der anderen: „{c}“, {x}, ist {s} und noch nicht fertig.',
  ],
  [
    'A change that cleared the fault was kept, so another one could show nothing.',
    'Eine Änderung, die den Fehler behob, wurde behalten; eine weitere könnte nichts zeigen.',
  ],
  [
    'Name the culprit, or go back to finding the side and see the fault again.',
    'Benenn die Ursache, oder geh zurück zur Seite und sieh den Fehler noch einmal.',
  ],
  ['‘{c:part}’ is done to a {a:target}, not to a {b:target}.', '„{c}“ gehört zu {a}, nicht zu {b}.'],
  ['No change is declared.', 'Keine Änderung ist angesagt.'],
  ['No change is open.', 'Keine Änderung ist offen.'],
  [
    'The change was made already: put it back or keep it.',
    'Die Änderung ist schon gemacht: Bau sie zurück oder behalte sie.',
  ],
  [
    'Watch with the change in place first, over time or by trying.',
    'Beobachte zuerst mit der Änderung, über die Zeit oder mit Versuchen.',
  ],
  ['That can’t be put back: keep it.', 'Das lässt sich nicht zurückbauen: Behalte es.'],
  [
    'It is a diagnostic change: it has to be put back.',
    'Es ist eine Änderung zur Fehlersuche: Sie muss zurückgebaut werden.',
  ],
  ['It did not clear the fault: put it back.', 'Sie hat den Fehler nicht behoben: Bau sie zurück.'],
  [
    'More than what was declared differs, so it is not known what cleared the fault: put it back.',
    'Es weicht mehr ab als angesagt; was den Fehler behob, ist also nicht bekannt: Bau sie zurück.',
  ],
  [
    'A fault {s:side} of {x:place} can’t also lie {l:sides}: nothing in the chain is both.',
    'Ein Fehler {s} {x.dat} kann nicht auch dort liegen: {l}. Nichts in der Kette ist beides.',
  ],
  ['The side was concluded at this device already.', 'An diesem Gerät ist die Seite schon festgelegt.'],
  ['No side was concluded.', 'Keine Seite ist festgelegt.'],
  ['No side was concluded at this device.', 'An diesem Gerät ist keine Seite festgelegt.'],

  // culprit-rules.ts, remedy-rules.ts
  ['That change is not finished.', 'Diese Änderung ist nicht fertig.'],
  [
    'That change is information only: it shows no culprit.',
    'Diese Änderung ist nur Auskunft: Sie weist keine Ursache nach.',
  ],
  ['That change was not retested.', 'Diese Änderung wurde nicht nachgetestet.'],
  ['The retest of that change says: {v:verdict}.', 'Der Nachtest dieser Änderung sagt: {v}.'],
  [
    'More than what was declared differed during that retest, so it can’t be put down to the change.',
    'Bei diesem Nachtest wich mehr ab als angesagt; er lässt sich der Änderung nicht zuschreiben.',
  ],
  ['The chain as found has no such place.', 'In der Kette wie vorgefunden gibt es diesen Ort nicht.'],
  [
    'No change has cleared the fault in a retest that counts.',
    'Keine Änderung hat den Fehler in einem Nachtest behoben, der zählt.',
  ],
  ['There is no such change in this round.', 'In dieser Runde gibt es diese Änderung nicht.'],
  [
    'That watch was not made after this change was put back.',
    'Diese Beobachtung wurde nicht nach dem Rückbau dieser Änderung gemacht.',
  ],
  [
    'The fault did not return in that watch: say why the confirmation is missing.',
    'In dieser Beobachtung kam der Fehler nicht wieder: Sag, warum die Bestätigung fehlt.',
  ],
  [
    'The fault was seen: go on and find the side.',
    'Der Fehler wurde gesehen: Mach weiter und finde die Seite.',
  ],
  [
    'A repair or a workaround needs a culprit; nothing was found yet.',
    'Eine Reparatur oder ein Umweg braucht eine Ursache; noch ist nichts gefunden.',
  ],
  [
    'A culprit is named, so a fault was found: repair it or work around it.',
    'Eine Ursache ist benannt, also gibt es einen Fehler: Reparier ihn oder umgeh ihn.',
  ],
  [
    'The client’s acceptance is still to come by its time.',
    'Die Annahme durch den Kunden liegt ihrer Zeit nach noch in der Zukunft.',
  ],
  [
    '“No fault found” needs {m:min} of watching without the fault; there are {n:num} so far.',
    '„Kein Fehler gefunden“ braucht {m} Beobachtung ohne den Fehler; bisher sind es {n}.',
  ],
  ['A culprit is named.', 'Eine Ursache ist benannt.'],
  ['No culprit is named.', 'Keine Ursache ist benannt.'],
  ['The watch after the remedy does not show enough.', 'Die Beobachtung nach der Abhilfe zeigt nicht genug.'],
  [
    'The fault came {n:times} after the remedy: it is not closed by that.',
    'Der Fehler kam {n} nach der Abhilfe: Damit ist es nicht erledigt.',
  ],
  ['Or close with a reason.', 'Oder schließ mit einem Grund ab.'],
  ['Record the fault in a watch first.', 'Halte den Fehler zuerst in einer Beobachtung fest.'],
  [
    'A ticket can be reopened for {n:num} days; open a new one.',
    'Ein Ticket lässt sich {n} Tage lang wieder öffnen; eröffne ein neues.',
  ],

  // escalation-rules.ts, evidence-rules.ts, second-line-rules.ts
  [
    'One thing is missing: add it, or say why it can’t be had.',
    'Eine Sache fehlt: Ergänz sie, oder sag, warum sie nicht zu haben ist.',
  ],
  [
    '{n:num} things are missing: add them, or say why they can’t be had.',
    '{n} Sachen fehlen: Ergänz sie, oder sag, warum sie nicht zu haben sind.',
  ],
  ['Second line waits for no answer.', 'Die zweite Ebene wartet auf keine Antwort.'],
  ['That request was answered already.', 'Diese Frage ist schon beantwortet.'],
  ['The ticket has no such evidence: {i:raw}.', 'Das Ticket hat diesen Beleg nicht: {i}.'],
  ['The ticket has no such evidence.', 'Das Ticket hat diesen Beleg nicht.'],
  ['The ticket has no watch under that id.', 'Das Ticket hat keine Beobachtung unter dieser Kennung.'],
  ['The ticket has no change under that id.', 'Das Ticket hat keine Änderung unter dieser Kennung.'],
  ['Second line still waits for: {t:raw}.', 'Die zweite Ebene wartet noch auf: {t}.'],
  ['That item was withdrawn already.', 'Dieser Beleg wurde schon zurückgezogen.'],
  ['You have taken this case already.', 'Du hast diesen Fall schon übernommen.'],
];
