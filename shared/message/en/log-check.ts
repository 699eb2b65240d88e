import type { logCheckCodes } from '../codes/log-check.ts';
import type { Sentences } from '../sentences.ts';

export const logCheckEn: Sentences<typeof logCheckCodes> = {
  logNumbersCompared: ({ events }, say) =>
    `The numbers of ${say.plural(events, '1 event', `${events} events`)} were compared with their order, and the last one with the ticket's own.`,
  logHashesCompared: ({ events }, say) =>
    `The hash of ${say.plural(events, '1 event', `each of ${events} events`)} was computed anew, and compared with the one stored and with the one that its successor names.`,
  logTextsCompared: ({ texts, erased }, say) =>
    `${say.plural(texts, '1 text', `${texts} texts`)} that people typed ${say.plural(texts, 'was', 'were')} compared with the ${say.plural(texts, 'digest', 'digests')} in the log; ${say.plural(erased, '1 of them is', `${erased} of them are`)} erased.`,
  snapshotCompared: ({ events, version }, say) =>
    `Every field of the stored record (version ${version}) was compared with what ${say.plural(events, 'the 1 event', `the ${events} events`)} of the log lead to.`,
  snapshotNotInUse: ({ events, snapshot, program }, say) =>
    `The stored record (version ${snapshot}) is not in use by this server (version ${program}). The record is read from ${say.plural(events, 'the 1 event', `the ${events} events`)} of the log instead; nothing was left to compare.`,
  logDoesNotReplay: ({ events }, say) =>
    `${say.plural(events, 'The 1 event', `The ${events} events`)} of the log could not be replayed; the stored record was compared with nothing.`,
};
