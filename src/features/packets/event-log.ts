import canonicalize from 'canonicalize';
import type { LoggedEvent } from '../ticket-record/index.ts';

/**
 * The log as it was hashed: each line the RFC 8785 form of one event, so that the SHA-256 of a line is that event's
 * hash, and `previousHash` in it the hash of the line before.
 */
export const eventLines = (events: readonly LoggedEvent[]): string =>
  events.map(({ hash, ...hashed }) => `${canonicalize(hashed)}\n`).join('');

/** The hashes that the events were stored with, one a line. */
export const eventHashes = (events: readonly LoggedEvent[]): string =>
  events.map(({ hash }) => `${hash}\n`).join('');

/** How a reader verifies the two, with nothing but standard command-line programs. */
export const howToVerify = `How to verify this log
======================

events.jsonl holds one event a line, in the order in which they were accepted, as canonical JSON (RFC 8785).
hashes.txt holds the SHA-256 that each event was stored with, one a line, in the same order.

1. The SHA-256 of each line, without its line feed, is the hash stored with it:

   while IFS= read -r line; do
     printf '%s' "$line" | sha256sum | cut -c 1-64
   done < events.jsonl | diff - hashes.txt && echo 'every event is as it was stored'

2. Each event names the hash of the event before it (the first names 64 zeros), so none was taken out or put in:

   sed 's/.*"previousHash":"\\([0-9a-f]*\\)".*/\\1/' events.jsonl | tail -n +2 |
     diff - <(head -n -1 hashes.txt) && echo 'the chain of events is whole'

The second line needs bash. That the files are as they were packed: sha256sum -c manifest-sha256.txt, run in the
folder that holds bagit.txt.
`;
