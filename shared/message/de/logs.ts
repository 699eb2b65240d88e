import type { logCodes } from '../codes/logs.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { ValuesOf } from '../values.ts';

const lineHas = (count: number, say: Say): string =>
  say.plural(count, `${count} Zeile hat`, `${count} Zeilen haben`);

function before(found: ValuesOf<(typeof logCodes)['kindComesRegularlyBefore']>, say: Say): string {
  const seen = `bei ${found.preceded} von ${found.of} Vorkommen in den ${say.number(found.within)} s davor`;
  const doubt = `p = ${say.number(found.p, 4)}, berichtigt für ${found.kindsTested} geprüfte Arten`;
  return `${say.start(say.message(found.kind))}: ${seen}; durch Zufall wären es etwa ${say.number(found.expected, 1)} (${doubt})`;
}

export const logsDe: Sentences<typeof logCodes> = {
  logEventKind: ({ kind }, say) => say.term('logEvent', kind),
  ownLogEventKind: ({ kind }, say) => say.quoted(kind),
  logShows: ({ first, excerpt }, say) => `Im Protokoll steht: ${say.message(first)}. ${say.text(excerpt)}`,
  logShowsInTurn: ({ first, next, excerpt }, say) =>
    `Im Protokoll steht: ${say.message(first)}, dann ${next.map(say.message).join(', ')}. ${say.text(excerpt)}`,
  logLine: ({ fileName, line, kind, excerpt }, say) =>
    `Protokoll ${say.name(fileName)}, Zeile ${line}: ${say.message(kind)} (${say.text(excerpt)}).`,
  unnamedLogLine: ({ line, kind, excerpt }, say) =>
    `Protokoll ohne Namen, Zeile ${line}: ${say.message(kind)} (${say.text(excerpt)}).`,

  nothingToCompareLogWith: () => 'Es gibt keine Vorkommen, mit denen sich das Protokoll vergleichen ließe.',
  noLineHasTime: () => 'Keine Zeile des Protokolls hat eine Zeit.',
  logCoversOccurrences: ({ covered, of, shown, inGap, outside }) => {
    const missing = [
      ...(inGap > 0 ? [`${inGap} in einer Lücke`] : []),
      ...(outside > 0 ? [`${outside} außerhalb seiner Zeit`] : []),
    ];
    const rest = missing.length > 0 ? `; ${missing.join(', ')}` : '';
    return `Das Protokoll erfasst ${covered} von ${of} Vorkommen und zeigt bei ${shown} etwas${rest}.`;
  },
  kindComesRegularlyBefore: (found, say) => `${before(found, say)}.`,
  kindComesBeforeByChance: (found, say) => `${before(found, say)}: nicht mehr, als der Zufall erklärt.`,
  occurrencesOutsideLog: ({ outside, of }) =>
    `${outside} von ${of} Vorkommen liegen, wo das Protokoll keine Zeilen hat, und zählen nicht mit.`,
  occurrencesWhileSettling: ({ occurrences }, say) =>
    `${occurrences} ${say.plural(occurrences, 'kam', 'kamen')}, während das davor noch nachwirkte, und ${say.plural(occurrences, 'zählt', 'zählen')} zu ihm.`,
  onlyFirstOccurrencesUsed: ({ used }) => `Nur die ersten ${used} Vorkommen sind berücksichtigt.`,
  tooFewOccurrencesForHabit: ({ least }) =>
    `Mindestens ${least} Vorkommen sind nötig, um Gewohnheit von Zufall zu unterscheiden.`,
  kindNotTested: ({ kind }, say) =>
    `${say.start(say.message(kind))}: kam zu oft, um jedes Mal aufgehoben zu sein, und ist nicht geprüft.`,
  logCoversPartOfWatch: ({ covered, watch }, say) =>
    `Das Protokoll erfasst ${say.number(covered, 1)} der ${say.number(watch, 1)} min der Beobachtung; was im Rest kam, steht nicht darin.`,
  eventsWithoutTime: ({ events }, say) =>
    `${events} ${say.plural(events, 'weiteres Ereignis', 'weitere Ereignisse')}, vielleicht der Fehler, ${say.plural(events, 'lässt', 'lassen')} sich keiner Zeit zuordnen.`,
  lateOccurrencesMayBeMissing: () =>
    'Das Protokoll hat mehr Ereignisse, als aufgehoben werden; späte Vorkommen können fehlen.',

  logDamaged: () => 'Die Datei ist beschädigt oder abgeschnitten; gelesen ist nur, was davor kam.',
  logLongerThanRead: () => 'Die Datei ist größer, als gelesen wird; gelesen ist nur ihr Anfang.',
  linesWithoutZone: ({ lines }, say) =>
    `${lineHas(lines, say)} keine Zeitzone; genommen ist UTC. Nenn die Zone oder einen Zeitpunkt, der bekannt ist.`,
  linesWithoutYear: ({ lines }, say) =>
    `${lineHas(lines, say)} kein Jahr und damit auch kein Datum. Sag, wann das Protokoll geholt wurde.`,
  linesWithoutDate: ({ lines }, say) =>
    `${lineHas(lines, say)} eine Uhrzeit und kein Datum. Sag, wann das Protokoll geholt wurde.`,
  dayOrderUnknown: ({ example }, say) =>
    `Steht in ${say.text(example)} der Tag oder der Monat vorn? Das Protokoll sagt es nicht, darum haben solche Zeilen noch keine Zeit. Füg es noch einmal an und sag, was gilt.`,
  linesSinceStartOnly: ({ lines }, say) =>
    `${lineHas(lines, say)} nur Sekunden seit dem Start des Geräts. Sag, wann es startete, oder nenn einen Zeitpunkt, der bekannt ist.`,
  deviceStartedAnew: ({ starts }, say) =>
    `Das Gerät startete ${say.times(starts)}; nur was auf den letzten Start folgt, hat eine Zeit.`,
  linesOfUnsetClock: ({ lines }, say) =>
    `${lineHas(lines, say)} eine Zeit vor 1990 oder nach 2199: Die Uhr des Geräts war nicht gestellt.`,
  clockWasSet: ({ times }, say) =>
    `Die Uhr des Geräts wurde ${say.times(times)} gestellt; Zeiten darum herum sind unsicher.`,
  mostLinesWithoutTime: ({ lines }) => `Die meisten Zeilen (${lines}) haben keine Zeit, die lesbar wäre.`,
  longLinesCut: ({ lines }, say) =>
    `${lines} überlange ${say.plural(lines, 'Zeile wurde', 'Zeilen wurden')} nur zum Teil gelesen.`,
  eventsCountedOnly: ({ events, kind }, say) =>
    `${say.start(say.message(kind))}: ${events} weitere sind gezählt, aber nicht aufgehoben.`,

  zoneUnknown: ({ zone }, say) => `${say.text(zone)} ist keine Zeitzone.`,
  logTakenAtUnreadable: () => 'Der Zeitpunkt, zu dem das Protokoll geholt wurde, ist nicht lesbar.',
  deviceStartUnreadable: () => 'Der Zeitpunkt, zu dem das Gerät startete, ist nicht lesbar.',
  knownMomentUnreadable: ({ moment }, say) => `${say.text(moment)} ist kein Zeitpunkt mit Zeitzone.`,
  noTimeInLine: ({ line }, say) => `In ${say.text(line)} steht keine Zeit.`,
  twoMomentsSinceStart: () => 'Für die Sekunden seit dem Start des Geräts sind zwei Zeitpunkte genannt.',
  twoMomentsOfClock: () =>
    'Zwei Zeitpunkte, die für die Uhr des Geräts genannt sind, weichen stärker ab, als eine Uhr nachgeht: Sie wurde dazwischen gestellt, oder einer ist falsch.',

  recognitionRowMisfit: ({ row, kind, why }, say) => `Zeile ${row} (${say.text(kind)}): ${say.message(why)}`,
  recognitionRowsTooMany: ({ most }) => `Mehr als ${most} Zeilen.`,
  recognitionWordsTooMany: () => 'Die Zeilen haben mehr Wörter, als sich auf einmal suchen lassen.',
  rowKindIsNoName: () => 'Die Art muss ein Name sein wie lampFault.',
  rowGroupEmpty: () => 'Eine Gruppe hat keine Wörter.',
  rowWordsTooMany: ({ most }) => `Mehr als ${most} Wörter.`,
  rowWordUnusable: ({ word }, say) =>
    `${say.text(word)} hat keinen ASCII-Buchstaben und keine Ziffer oder ist zu lang.`,
  rowMissesExample: () => 'Sie findet ihr eigenes Beispiel nicht.',
};
