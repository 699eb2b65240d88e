import type { Pair } from './template.ts';

/** The plan's advice, its reasons, and tests as orders: shared/isolation/plan-wording.ts, plan.ts, candidates.ts. */
export const planPairs: readonly Pair[] = [
  // candidates.ts
  [
    'Put up the menu of {x:place} and watch whether it stays when the fault comes',
    'Ruf das Menü von {x.dat} auf und sieh, ob es bleibt, wenn der Fehler kommt',
  ],
  ['Play a brought source in place of {x:place}', 'Spiel von einer mitgebrachten Quelle statt von {x.dat}'],
  ['Play {x:place} instead', 'Spiel stattdessen von {x.dat}'],
  ['Reseat the plugs of {x:place}', 'Steck die Stecker neu an {x.dat}'],
  ['Replace {x:place}', 'Ersetz {x}'],
  ['Lay a temporary cable in place of {x:place}', 'Leg vorübergehend ein Kabel als Ersatz für {x}'],
  ['Plug straight into the processor: {x:place}', 'Steck direkt in den Prozessor: {x}'],
  ['Bypass {x:place}', 'Umgeh {x}'],
  ['Unplug the branch: {x:place}', 'Zieh den Zweig ab: {x}'],
  ['Move to another port: {x:place}', 'Steck an eine andere Buchse um: {x}'],
  ['Raise the mode of {x:place}', 'Heb die Betriebsart an: {x}'],
  [
    'Switch off processing and EDID management of {x:place}',
    'Schalte Bildverarbeitung und EDID-Verwaltung ab: {x}',
  ],
  ['Limit to 9 Gbit/s the input of {x:place}', 'Begrenz den Eingang auf 9 Gbit/s: {x}'],
  ['Limit to 9 Gbit/s the output of {x:place}', 'Begrenz den Ausgang auf 9 Gbit/s: {x}'],
  ['Re-issue hot plug at {x:place}', 'Lös Hot-Plug neu aus: {x}'],
  [
    'Insert a switch that regenerates sync into {x:place}',
    'Setz in {x} einen Umschalter ein, der den Takt erneuert',
  ],
  ['Move next to the display: {x:place}', 'Stell neben die Anzeige: {x}'],
  ['Substitute {x:place}', 'Tausch {x} gegen eine andere Anzeige'],
  ['Restore earlier settings of {x:place}', 'Stell frühere Einstellungen wieder her: {x}'],
  ['Update the firmware of {x:place}', 'Aktualisier die Firmware von {x.dat}'],
  ['Leave everything as it is and go on watching', 'Lass alles, wie es ist, und beobachte weiter'],
  ['The client doesn’t want it.', 'Der Kunde will es nicht.'],
  ['It takes a second person.', 'Das braucht eine zweite Person.'],
  ['Not at hand: {k:parts}.', 'Nicht zur Hand: {k}.'],
  // client-reach.ts
  ['It takes something the client doesn’t have.', 'Das braucht etwas, das der Kunde nicht hat.'],
  ['That is work for a technician.', 'Das ist Arbeit für die Technik.'],
  ['Which cable it is isn’t known.', 'Welches Kabel es ist, ist nicht bekannt.'],
  ['It has no menu to do that in.', 'Es gibt dort kein Menü, in dem das ginge.'],
  [
    'An optical cable carries laser light: clients leave its plugs alone.',
    'Ein optisches Kabel führt Laserlicht: Kunden lassen die Finger von den Steckern.',
  ],
  ['The cable doesn’t lie free.', 'Das Kabel liegt nicht frei.'],
  [
    'The client can’t get at both plugs standing on the floor, outside any rack.',
    'Der Kunde kommt nicht an beide Stecker, auf dem Boden stehend und außerhalb jedes Racks.',
  ],

  // kit.ts
  ['a {l:num} m Premium High Speed (18 Gbit/s) cable', 'ein {l}-m-Kabel, Premium High Speed (18 Gbit/s)'],
  ['a {l:num} m Ultra High Speed (48 Gbit/s) cable', 'ein {l}-m-Kabel, Ultra High Speed (48 Gbit/s)'],
  ['a {l:num} m certified cable', 'ein {l}-m-Kabel, zertifiziert'],
  ['a {l:num} m {c:raw} cable', 'ein {l}-m-Kabel, {c}'],
  ['a coupler that passes the full rate', 'eine Kupplung, die die volle Rate durchlässt'],
  ['a switch that regenerates sync', 'ein Umschalter, der den Takt erneuert'],
  ['a test display with the same content protection', 'eine Testanzeige mit demselben Kopierschutz'],
  ['a second source known to be good', 'eine zweite Quelle, die sicher gut ist'],
  [
    'a pair of twisted-pair extenders known to be good',
    'ein Paar Verlängerungen über verdrillte Paare, die sicher gut sind',
  ],

  // plan-wording.ts
  ['{t:part} (about {m:min}).', '{t} (etwa {m}).'],
  [
    'If it stays, {x:place} is at {p:pct}; if it vanishes, at {q:pct}.',
    'Bleibt es, steht {x} bei {p}; verschwindet es, bei {q}.',
  ],
  [
    'If the fault stays away, {x:place} is at {p:pct}; if it comes, at {q:pct}.',
    'Bleibt der Fehler weg, steht {x} bei {p}; kommt er, bei {q}.',
  ],
  [
    'If it stays, the likeliest is {x:place} ({p:pct}); if it vanishes, {y:place} ({q:pct}).',
    'Bleibt es, ist am wahrscheinlichsten {x} ({p}); verschwindet es, {y} ({q}).',
  ],
  [
    'If the fault stays away, the likeliest is {x:place} ({p:pct}); if it comes, {y:place} ({q:pct}).',
    'Bleibt der Fehler weg, ist am wahrscheinlichsten {x} ({p}); kommt er, {y} ({q}).',
  ],
  ['Quiet for {m:min} counts as cleared.', 'Ruhe für {m} zählt als behoben.'],
  [
    'From here it takes about {m:min} to a culprit on average.',
    'Von hier dauert es im Mittel etwa {m} bis zur Ursache.',
  ],
  [
    'It is in place already, so nothing but the rest of the watch is to be paid for.',
    'Es ist schon eingebaut, also kostet es nur noch den Rest der Beobachtung.',
  ],
  ['Nothing is touched, and {r:part}.', 'Nichts wird angefasst, und {r}.'],
  ['Nothing is unplugged, and {r:part}.', 'Nichts wird abgezogen, und {r}.'],
  [
    'one of its two answers settles it: {x:place} ({p:pct})',
    'eine der zwei Antworten entscheidet es: {x} ({p})',
  ],
  ['it takes {x:place} to {p:pct} or down to {q:pct}', 'es bringt {x} auf {p} oder hinunter auf {q}'],
  ['it parts {x:place} from {y:place}', 'es trennt {x} von {y.dat}'],
  ['It is {x:place} ({p:pct}), most likely {m:part}.', 'Es ist {x} ({p}), am ehesten {m}.'],
  [
    'Put the suspect back, see the fault return, then {r:part}; watch once more after the repair.',
    'Bau wieder ein, was im Verdacht steht, sieh den Fehler wiederkommen, dann {r}; beobachte nach der Reparatur noch einmal.',
  ],
  [
    'replace it by one that is certified for the rate and no longer than needed',
    'ersetz es durch eines, das für die Rate zertifiziert und nicht länger als nötig ist',
  ],
  [
    'clean and reseat both its plugs, and replace it if the fault comes back',
    'reinige beide Stecker, steck sie neu, und ersetz das Kabel, wenn der Fehler wiederkommt',
  ],
  ['lay it the right way round', 'leg es richtig herum'],
  [
    'give its electronics the power that they ask for, or replace it',
    'gib der Elektronik den Strom, den sie verlangt, oder ersetz es',
  ],
  [
    'set its port to the mode that the format needs',
    'stell die Buchse auf die Betriebsart, die das Format braucht',
  ],
  [
    'restore its EDID settings, or have it pass on the display’s EDID as it is',
    'stell die EDID-Einstellungen wieder her, oder lass das EDID der Anzeige weitergeben, wie es ist',
  ],
  [
    'set its ports to the content protection that the source asks for, or replace it',
    'stell an den Buchsen den Kopierschutz ein, den die Quelle verlangt, oder tausch das Gerät',
  ],
  [
    'update its firmware, by the maker’s instructions and without a break in the mains',
    'aktualisier die Firmware, nach der Anleitung des Herstellers und ohne dass der Strom ausfällt',
  ],
  [
    'see to its ventilation and power supply; leave mains wiring to a licensed electrician',
    'kümmere dich um Lüftung und Stromversorgung; an Netzleitungen arbeitet nur eine Elektrofachkraft',
  ],
  [
    'switch off the processing that does it, or restore its settings',
    'schalte die Verarbeitung ab, die es tut, oder stell die Einstellungen wieder her',
  ],
  [
    'put a switch that regenerates sync behind it, or have its output repaired',
    'setz einen Umschalter dahinter, der den Takt erneuert, oder lass den Ausgang reparieren',
  ],
  [
    'update its firmware, or limit its output to what passes',
    'aktualisier die Firmware, oder begrenz den Ausgang auf das, was durchgeht',
  ],
  ['hand it to second line', 'gib den Fall an die zweite Ebene'],
  [
    'The fault was seen only {t:times}, so every quiet retest takes {m:min}.',
    'Der Fehler wurde nur {t} gesehen, also dauert jeder ruhige Nachtest {m}.',
  ],
  [
    'Watch until it was seen {n:times} first: at the same rate a retest then takes {m:min}.',
    'Beobachte erst, bis er {n} gesehen wurde: Bei gleicher Häufigkeit dauert ein Nachtest dann {m}.',
  ],

  // plan.ts
  [
    'Nothing that a client can safely do would tell more: it takes a visit.',
    'Nichts, was ein Kunde gefahrlos tun kann, würde mehr verraten: Es braucht einen Einsatz.',
  ],
  [
    'It is most likely something outside the model ({p:pct}): hand the case on with what was found.',
    'Es ist höchstwahrscheinlich etwas außerhalb des Modells ({p}): Gib den Fall weiter mit dem, was gefunden wurde.',
  ],
  ['{r:part}; the likeliest is {x:place} ({p:pct}).', '{r}; am wahrscheinlichsten ist {x} ({p}).'],
  [
    'Nothing is left to try here that tells the suspects apart',
    'Hier bleibt nichts zu versuchen, das die Verdächtigen unterscheidet',
  ],
  [
    'What is left to try here takes more time than handing the case on',
    'Was hier noch zu versuchen ist, dauert länger, als den Fall weiterzugeben',
  ],
  ['Hand it to second line with the record.', 'Gib ihn mit dem Protokoll an die zweite Ebene.'],

  // planned-view.ts
  ['The menu stays', 'Das Menü bleibt'],
  ['The menu vanishes', 'Das Menü verschwindet'],
  ['It stays away', 'Er bleibt weg'],
  ['It comes', 'Er kommt'],
];
