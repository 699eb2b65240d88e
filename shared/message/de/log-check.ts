import type { logCheckCodes } from '../codes/log-check.ts';
import type { Sentences } from '../sentences.ts';

export const logCheckDe: Sentences<typeof logCheckCodes> = {
  logNumbersCompared: ({ events }, say) =>
    `${say.plural(events, 'Die Nummer von 1 Ereignis wurde', `Die Nummern von ${events} Ereignissen wurden`)} mit der Reihenfolge verglichen, die letzte auch mit der des Tickets.`,
  logHashesCompared: ({ events }, say) =>
    `${say.plural(events, 'Der Hash von 1 Ereignis wurde', `Die Hashes von ${events} Ereignissen wurden`)} neu berechnet und mit dem gespeicherten verglichen und mit dem, den das nächste nennt.`,
  logTextsCompared: ({ texts, erased }, say) =>
    `${say.plural(texts, '1 Text, den', `${texts} Texte, die`)} jemand getippt hat, ${say.plural(texts, 'wurde', 'wurden')} mit ${say.plural(texts, 'der Prüfsumme', 'den Prüfsummen')} im Protokoll verglichen; davon ${say.plural(erased, 'ist 1', `sind ${erased}`)} gelöscht.`,
  snapshotCompared: ({ events, version }, say) =>
    `Jedes Feld des gespeicherten Stands (Version ${version}) wurde mit dem verglichen, ${say.plural(events, 'wohin das 1 Ereignis des Protokolls führt', `wohin die ${events} Ereignisse des Protokolls führen`)}.`,
  snapshotNotInUse: ({ events, snapshot, program }, say) =>
    `Den gespeicherten Stand (Version ${snapshot}) verwendet dieser Server (Version ${program}) nicht. Er liest ihn aus ${say.plural(events, 'dem 1 Ereignis', `den ${events} Ereignissen`)} des Protokolls; zu vergleichen war nichts.`,
  logDoesNotReplay: ({ events }, say) =>
    `${say.plural(events, 'Das 1 Ereignis', `Die ${events} Ereignisse`)} des Protokolls ${say.plural(events, 'ließ', 'ließen')} sich nicht nachvollziehen; der gespeicherte Stand wurde mit nichts verglichen.`,
};
