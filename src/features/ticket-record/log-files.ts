import canonicalize from 'canonicalize';
import { erasureOf } from '../../../shared/contract/erased-text.ts';
import { replacedIn } from '../../../shared/contract/json-pointer.ts';
import { hashedForm, type LoggedEvent } from './log.ts';
import type { TextOfEvent } from './sealed-text.ts';

/**
 * The log as it was hashed: each line the RFC 8785 form of one event, so that the SHA-256 of a line is that event's
 * hash, and `previousHash` in it the hash of the line before.
 */
const eventLines = (events: readonly LoggedEvent[]): string =>
  events.map((event) => `${canonicalize(hashedForm(event))}\n`).join('');

/** The hashes that the events were stored with, one a line. */
const eventHashes = (events: readonly LoggedEvent[]): string =>
  events.map(({ hash }) => `${hash}\n`).join('');

/**
 * What people typed, one text a line: the event's number, where in its payload the text stands (RFC 6901), its digest, and
 * in base64 the salt followed by the text; of an erased text when and by which member instead.
 */
const eventTexts = (events: readonly LoggedEvent[]): string =>
  events
    .flatMap(({ sequence, payload, texts }) =>
      asHashed(texts, payload).map(({ pointer, sha256, salt, text }) => {
        const erasure = erasureOf(text);
        const content =
          erasure === null
            ? Buffer.from(`${salt ?? ''}${text}`).toString('base64')
            : `erased ${erasure.at} ${erasure.by}`;
        return `${sequence} ${pointer} ${sha256} ${content}\n`;
      }),
    )
    .join('');

/** Texts in the order in which they stand in the canonical form. */
function asHashed(texts: readonly TextOfEvent[], payload: object): TextOfEvent[] {
  const order: string[] = [];
  replacedIn(JSON.parse(canonicalize(payload) ?? ''), (_, pointer) => void order.push(pointer));
  return texts.toSorted((a, b) => order.indexOf(a.pointer) - order.indexOf(b.pointer));
}

/** How a reader verifies the three, with nothing but standard command-line programs. */
const howToVerify = (besideManifest: string): string => `How to verify this log
======================

events.jsonl holds one event a line, in the order in which they were accepted, as canonical JSON (RFC 8785).
hashes.txt holds the SHA-256 that each event was stored with, one a line, in the same order.
texts.txt holds what people typed, one text a line: the event's number, the place in its payload, the SHA-256 that stands
there instead, and in base64 what that is over: 64 hexadecimal digits of salt, then the text (UTF-8). An erased
text has lost both; its line says when it was erased, and by which member.

1. The SHA-256 of each line, without its line feed, is the hash stored with it:

   while IFS= read -r line; do
     printf '%s' "$line" | sha256sum | cut -c 1-64
   done < events.jsonl | diff - hashes.txt && echo 'every event is as it was stored'

2. Each event names the hash of the event before it (the first names 64 zeros), so none was taken out or put in:

   sed 's/.*"previousHash":"\\([0-9a-f]*\\)".*/\\1/' events.jsonl | tail -n +2 |
     diff - <(head -n -1 hashes.txt) && echo 'the chain of events is whole'

3. Each text is the one whose SHA-256 stands in its event, and each SHA-256 in an event has its line:

   grep -v ' erased ' texts.txt | while read -r event place digest content; do
     printf '%s' "$content" | base64 -d | sha256sum | cut -c 1-64
   done | diff - <(grep -v ' erased ' texts.txt | cut -d ' ' -f 3) &&
     grep -o '{"text":{"sha256":"[0-9a-f]*"}}' events.jsonl | cut -d '"' -f 6 |
     diff - <(cut -d ' ' -f 3 texts.txt) && echo 'every text is as it was stored, or erased'

The last two need bash. That the files are as they were packed: sha256sum -c manifest-sha256.txt, run in the
folder that holds ${besideManifest}.
`;

/**
 * A ticket's log as files from which it can be verified without the database.
 *
 * @param besideManifest the name of a file in the folder where `manifest-sha256.txt` lies
 */
export const logFiles = (events: readonly LoggedEvent[], besideManifest: string) => ({
  'events.jsonl': eventLines(events),
  'hashes.txt': eventHashes(events),
  'texts.txt': eventTexts(events),
  'HOW-TO-VERIFY.txt': howToVerify(besideManifest),
});
export const logFileNames = [
  'events.jsonl',
  'hashes.txt',
  'texts.txt',
  'HOW-TO-VERIFY.txt',
] as const satisfies (keyof ReturnType<typeof logFiles>)[];
