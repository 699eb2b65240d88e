import type { Pair } from './template.ts';

/** What a retest says: shared/isolation/retest-statistics.ts, state-machines/triage/retest.ts, attribution.ts. */
export const watchPairs: readonly Pair[] = [
  ['Nothing was watched yet.', 'Noch wurde nichts beobachtet.'],
  [
    'The retest used another trigger than the watch before the change, so the two can’t be compared.',
    'Der Nachtest hatte einen anderen Auslöser als die Beobachtung vor der Änderung; beide lassen sich nicht vergleichen.',
  ],
  [
    'One was watched over time and the other by a trigger, so the two can’t be compared.',
    'Das eine wurde über die Zeit beobachtet, das andere mit einem Auslöser; beide lassen sich nicht vergleichen.',
  ],
  [
    'The fault came {n:times} during the retest: it is still there.',
    'Der Fehler kam {n} während des Nachtests: Er ist noch da.',
  ],
  ['Whether it comes less often can’t be said.', 'Ob er seltener kommt, lässt sich nicht sagen.'],
  [
    'Repeat the retest the way the fault was reproduced.',
    'Wiederhol den Nachtest so, wie der Fehler nachgestellt wurde.',
  ],
  [
    'The fault came {n:times} during the retest: it is there with the change in place.',
    'Der Fehler kam {n} während des Nachtests: Er ist da, obwohl die Änderung eingebaut ist.',
  ],
  [
    'It was not seen before the change, so how often it came then is not known.',
    'Vor der Änderung wurde er nicht gesehen; wie oft er da kam, ist nicht bekannt.',
  ],
  [
    'The fault was not seen before the change, so not seeing it now says nothing.',
    'Der Fehler wurde vor der Änderung nicht gesehen; dass er jetzt ausbleibt, sagt also nichts.',
  ],
  ['Reproduce it first.', 'Stell ihn zuerst nach.'],
  ['This can’t be judged.', 'Das lässt sich nicht beurteilen.'],
  [
    '{p:pct} sure that the change made a difference: enough to call it cleared.',
    '{p} sicher, dass die Änderung wirkt: genug, um es behoben zu nennen.',
  ],
  [
    '{p:pct} sure by now that the change made a difference; {m:min} more without the fault to call it cleared.',
    'Inzwischen {p} sicher, dass die Änderung wirkt; noch {m} ohne den Fehler, um es behoben zu nennen.',
  ],
  [
    '{p:pct} sure by now that the change made a difference; {n:num} more tries in a row without a failure to call it cleared.',
    'Inzwischen {p} sicher, dass die Änderung wirkt; noch {n} gute Versuche hintereinander, um es behoben zu nennen.',
  ],
  [
    'No length of quiet watching would settle this.',
    'Keine noch so lange ruhige Beobachtung würde das entscheiden.',
  ],
  ['No number of tries would settle this.', 'Keine Zahl von Versuchen würde das entscheiden.'],
  ['{m:min} without the fault, {n:times} in {b:min} before.', '{m} ohne den Fehler, vorher {n} in {b}.'],
  [
    'Watch {m:min} more without the fault ({a:min} in all).',
    'Beobachte noch {m} ohne den Fehler (insgesamt {a}).',
  ],
  [
    'The fault is still there: {n:times} in {m:min} with the change, {a:times} in {b:min} before.',
    'Der Fehler ist noch da: {n} in {m} mit der Änderung, vorher {a} in {b}.',
  ],
  [
    'The fault is still there: {n:num} of {m:num} tries failed with the change, {a:num} of {b:num} before.',
    'Der Fehler ist noch da: Mit der Änderung schlugen {n} von {m} Versuchen fehl, vorher {a} von {b}.',
  ],
  [
    'None of {m:num} tries failed, {a:num} of {b:num} before.',
    'Keiner von {m} Versuchen schlug fehl, vorher {a} von {b}.',
  ],
  [
    'Try {n:num} more times without a failure ({a:num} in a row in all).',
    'Versuch es noch {n}-mal ohne Fehlschlag (insgesamt {a} hintereinander).',
  ],
  [
    'If nothing had changed, that would happen by chance with {p:pct}; the limit is {q:pct}.',
    'Hätte sich nichts geändert, käme das mit {p} durch Zufall vor; die Grenze ist {q}.',
  ],
  [
    'If nothing had changed, that would happen by chance with {p:pct}, more than the limit of {q:pct}.',
    'Hätte sich nichts geändert, käme das mit {p} durch Zufall vor, mehr als die Grenze von {q}.',
  ],
  [
    'It clearly comes less often (by chance alone with {p:pct}), but less often is not cleared.',
    'Er kommt deutlich seltener (durch bloßen Zufall mit {p}), aber seltener ist nicht behoben.',
  ],
  [
    'It clearly comes more often than before (by chance alone with {p:pct}).',
    'Er kommt deutlich öfter als vorher (durch bloßen Zufall mit {p}).',
  ],
  [
    'Whether it comes less often can’t be told from this.',
    'Ob er seltener kommt, lässt sich daraus nicht sagen.',
  ],
  [
    'The fault comes more often with the change in place: check that the change itself was made properly.',
    'Mit der Änderung kommt der Fehler öfter: Prüf, ob die Änderung selbst richtig gemacht wurde.',
  ],
  [
    'Before the change the fault came in bursts (independent occurrences lie this unevenly with {p:pct}), so the usual length of the retest is too short.',
    'Vor der Änderung kam der Fehler in Schüben (unabhängige Vorkommen liegen mit {p} so ungleich), also ist die übliche Länge des Nachtests zu kurz.',
  ],
  ['To allow for that, watch {m:min} in all.', 'Um das zu berücksichtigen, beobachte insgesamt {m}.'],
  ['The tries {w:part} are no whole numbers.', 'Die Versuche {w} sind keine ganzen Zahlen.'],
  [
    'More tries failed than were made, in the watch {w:part}.',
    'In der Beobachtung {w} schlugen mehr Versuche fehl, als gemacht wurden.',
  ],
  [
    'The occurrences in the watch {w:part} are no whole number.',
    'Die Vorkommen in der Beobachtung {w} sind keine ganze Zahl.',
  ],
  ['The length of the watch {w:part} is not known.', 'Die Länge der Beobachtung {w} ist nicht bekannt.'],
  ['The watch {w:part} has no length.', 'Die Beobachtung {w} hat keine Länge.'],
  ['before the change', 'vor der Änderung'],
  ['of the retest', 'des Nachtests'],
  // attribution.ts
  [
    'At {x:place}, ‘{k:value}’ went from {a:part} to {b:part} without being declared.',
    'An {x.dat} ging „{k}“ von {a} auf {b}, ohne angesagt zu sein.',
  ],
  [
    'At {x:place}, ‘{k:value}’ was declared to become {a:part}; it was {b:part} and is {c:part}.',
    'An {x.dat} war für „{k}“ angesagt: {a}; es war {b} und ist {c}.',
  ],
  ['‘{v:value}’', '„{v}“'],
];
