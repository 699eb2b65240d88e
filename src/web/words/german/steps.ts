import type { Pair } from './template.ts';

/** What a ticket asks for next, and what second line would miss: state-machines/planning, triage/completeness.ts. */
export const stepPairs: readonly Pair[] = [
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
