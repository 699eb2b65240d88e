import { plural, wordsOf } from '../words/language.ts';

/** Words of the screen on which texts of a ticket's log are erased. */
export const textsWords = wordsOf({
  en: {
    title: (number: number, client: string) => `Texts of no. ${number}: ${client}`,
    toTicket: 'Back to the ticket',
    lead: 'What people wrote on this ticket, newest first. A text that should not be kept, because it names somebody or was written by mistake, can be erased for good. The log then says that it was, when and by whom, and can still be checked.',
    who: (name: string, when: string) => `${name}, ${when}`,
    none: 'Nobody wrote anything here that can be erased.',
    older: (count: number) =>
      plural(
        'en',
        count,
        '1 entry was written before texts could be erased. It stays as it is.',
        `${count} entries were written before texts could be erased. They stay as they are.`,
      ),
    erase: 'Erase',
    eraseThis: (text: string) => `Erase: ${text}`,
    ask: 'Erase this text for good?',
    goes: 'It goes from the ticket, from its log and from its evidence, everywhere on this ticket where the same stands in a field of the same name. Nobody can bring it back.',
    stays:
      'It stays in case packets that were made, in notes of the chain, and in backups of the server. Phones show it until they next have a connection.',
    reason: 'Why',
    reasonHint: 'It stands on the log, so do not repeat what you erase.',
    reasonTooShort: 'Say why in a few words.',
    eraseForGood: 'Erase for good',
    done: 'The text is erased.',
  },
  de: {
    title: (number, client) => `Texte von Nr. ${number}: ${client}`,
    toTicket: 'Zurück zum Ticket',
    lead: 'Was auf diesem Ticket geschrieben wurde, das Neueste zuerst. Ein Text, der nicht bleiben soll, weil er jemanden nennt oder aus Versehen dasteht, lässt sich endgültig löschen. Das Protokoll sagt dann, dass, wann und von wem er gelöscht wurde, und ist weiter prüfbar.',
    who: (name, when) => `${name}, ${when}`,
    none: 'Hier hat niemand etwas geschrieben, das zu löschen wäre.',
    older: (count) =>
      plural(
        'de',
        count,
        '1 Eintrag ist älter als das Löschen von Texten. Er bleibt, wie er ist.',
        `${count} Einträge sind älter als das Löschen von Texten. Sie bleiben, wie sie sind.`,
      ),
    erase: 'Löschen',
    eraseThis: (text) => `Löschen: ${text}`,
    ask: 'Diesen Text endgültig löschen?',
    goes: 'Er verschwindet vom Ticket, aus dem Protokoll und aus den Belegen, überall auf diesem Ticket, wo dasselbe in einem gleichnamigen Feld steht. Niemand kann ihn zurückholen.',
    stays:
      'Er bleibt in Fallpaketen, die es schon gibt, in Notizen der Kette und in Sicherungen des Servers. Telefone zeigen ihn, bis sie wieder eine Verbindung haben.',
    reason: 'Warum',
    reasonHint: 'Das steht im Protokoll; wiederhole also nicht, was du löschst.',
    reasonTooShort: 'Sag in ein paar Worten, warum.',
    eraseForGood: 'Endgültig löschen',
    done: 'Der Text ist gelöscht.',
  },
});
