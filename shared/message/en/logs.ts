import type { logCodes } from '../codes/logs.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { ValuesOf } from '../values.ts';

const linesTell = (count: number, say: Say): string =>
  say.plural(count, `${count} line tells`, `${count} lines tell`);

function before(found: ValuesOf<(typeof logCodes)['kindComesRegularlyBefore']>, say: Say): string {
  const seen = `came within ${say.number(found.within)} s before ${found.preceded} of ${found.of} occurrences`;
  const doubt = `p = ${say.number(found.p, 4)}, corrected for ${found.kindsTested} kinds tested`;
  return `${say.start(say.message(found.kind))} ${seen}; about ${say.number(found.expected, 1)} would be by chance (${doubt})`;
}

export const logsEn: Sentences<typeof logCodes> = {
  logEventKind: ({ kind }, say) => say.term('logEvent', kind),
  ownLogEventKind: ({ kind }, say) => say.quoted(kind),
  logShows: ({ first, excerpt }, say) => `The log shows ${say.message(first)}: ${say.text(excerpt)}`,
  logShowsInTurn: ({ first, next, excerpt }, say) =>
    `The log shows ${say.message(first)}, then ${next.map(say.message).join(', ')}: ${say.text(excerpt)}`,
  logLine: ({ fileName, line, kind, excerpt }, say) =>
    `Log ${say.name(fileName)}, line ${line}: ${say.message(kind)} (${say.text(excerpt)}).`,
  unnamedLogLine: ({ line, kind, excerpt }, say) =>
    `Log without a name, line ${line}: ${say.message(kind)} (${say.text(excerpt)}).`,

  nothingToCompareLogWith: () => 'There are no occurrences to compare the log with.',
  noLineHasTime: () => 'No line of the log is tied to a time.',
  logCoversOccurrences: ({ covered, of, shown, inGap, outside }) => {
    const missing = [
      ...(inGap > 0 ? [`${inGap} in a gap`] : []),
      ...(outside > 0 ? [`${outside} outside its span`] : []),
    ];
    const rest = missing.length > 0 ? `; ${missing.join(', ')}` : '';
    return `The log covers ${covered} of ${of} occurrences and shows something at ${shown}${rest}.`;
  },
  kindComesRegularlyBefore: (found, say) => `${before(found, say)}.`,
  kindComesBeforeByChance: (found, say) => `${before(found, say)}: no more than chance explains.`,
  occurrencesOutsideLog: ({ outside, of }) =>
    `${outside} of ${of} occurrences lie where the log has no lines and are left out.`,
  occurrencesWhileSettling: ({ occurrences }) =>
    `${occurrences} came while the one before was still settling and count with it.`,
  onlyFirstOccurrencesUsed: ({ used }) => `Only the first ${used} occurrences are used.`,
  tooFewOccurrencesForHabit: ({ least }) =>
    `At least ${least} occurrences are needed to tell habit from chance.`,
  kindNotTested: ({ kind }, say) =>
    `${say.start(say.message(kind))} came too often for all to be kept, and isn’t tested.`,
  logCoversPartOfWatch: ({ covered, watch }, say) =>
    `The log covers ${say.number(covered, 1)} of the watch’s ${say.number(watch, 1)} min; what came in the rest isn’t in it.`,
  eventsWithoutTime: ({ events }) => `${events} more that may be the fault can’t be tied to a time.`,
  lateOccurrencesMayBeMissing: () =>
    'The log has more events than are kept, so late occurrences may be missing.',

  logDamaged: () => 'The file is damaged or cut off; only what came before is read.',
  logLongerThanRead: () => 'The file is larger than is read; only its beginning is.',
  linesWithoutZone: ({ lines }, say) =>
    `${linesTell(lines, say)} no time zone; taken as UTC. Give the zone, or a moment that is known.`,
  linesWithoutYear: ({ lines }, say) =>
    `${linesTell(lines, say)} no year, so no date either. Say when the log was taken.`,
  linesWithoutDate: ({ lines }, say) =>
    `${linesTell(lines, say)} a time of day and no date. Say when the log was taken.`,
  dayOrderUnknown: ({ example }, say) =>
    `Is the day or the month first in ${say.text(example)}? The log doesn’t tell, so such lines have no time yet. Attach the log once more and say which.`,
  linesSinceStartOnly: ({ lines }, say) =>
    `${linesTell(lines, say)} seconds since the device started only. Say when it started, or give a moment that is known.`,
  deviceStartedAnew: ({ starts }, say) =>
    `The device started ${say.times(starts)}; only what follows the last start is tied to a time.`,
  linesOfUnsetClock: ({ lines }, say) =>
    `${linesTell(lines, say)} a time before 1990 or after 2199: the device’s clock wasn’t set.`,
  clockWasSet: ({ times }, say) =>
    `The device’s clock was set ${say.times(times)}; times around that are unsure.`,
  mostLinesWithoutTime: ({ lines }) => `Most lines (${lines}) have no time that could be read.`,
  longLinesCut: ({ lines }, say) =>
    `${lines} over-long ${say.plural(lines, 'line was', 'lines were')} read in part.`,
  eventsCountedOnly: ({ events, kind }, say) =>
    `${events} more of ${say.message(kind)} are counted, but not kept.`,

  zoneUnknown: ({ zone }, say) => `${say.text(zone)} is no time zone.`,
  logTakenAtUnreadable: () => 'The moment at which the log was taken can’t be read.',
  deviceStartUnreadable: () => 'The moment at which the device started can’t be read.',
  knownMomentUnreadable: ({ moment }, say) => `${say.text(moment)} is no moment with a zone.`,
  noTimeInLine: ({ line }, say) => `No time is found in ${say.text(line)}.`,
  twoMomentsSinceStart: () => 'Two moments are given for the seconds since the device started.',
  twoMomentsOfClock: () =>
    'Two moments that are given for the device’s clock differ by more than a clock drifts: it was set in between, or one is mistaken.',

  recognitionRowMisfit: ({ row, kind, why }, say) => `Row ${row} (${say.text(kind)}): ${say.message(why)}`,
  recognitionRowsTooMany: ({ most }) => `More than ${most} rows.`,
  recognitionWordsTooMany: () => 'The rows have more words than can be looked for at once.',
  rowKindIsNoName: () => 'the kind must be a name such as lampFault.',
  rowGroupEmpty: () => 'a group without words.',
  rowWordsTooMany: ({ most }) => `more than ${most} words.`,
  rowWordUnusable: ({ word }, say) => `${say.text(word)} has no ASCII letter or digit, or is too long.`,
  rowMissesExample: () => 'it doesn’t find its own example.',
};
