import type { OutboxEntry } from '../store/outbox-entry.ts';
import { commandWord, terms } from '../words/terms.ts';
import { outboxWords } from './words.ts';

/** What an entry does, in a few words. */
export function entryWord(entry: OutboxEntry): string {
  const t = outboxWords();
  if (entry.kind === 'command') return commandWord(entry.command);
  if (entry.kind === 'upload') return t.upload(entry.fileName);
  const { kind } = entry.reading.reading;
  return t.reading(kind === 'note' ? terms().command.note : terms().completenessItem[kind]);
}

/** What the member wrote with it, as they wrote it. */
export function entryDetail(entry: OutboxEntry): string {
  if (entry.kind === 'upload') return entry.about.description;
  return textsIn(entry.kind === 'command' ? entry.command : entry.reading.reading).join(' · ');
}

/** The fields in which people write; the others hold ids, moments and names of the contract, which nobody typed. */
const typed: ReadonlySet<string> = new Set([
  'text',
  'note',
  'reason',
  'trigger',
  'description',
  'detail',
  'expected',
  'explanation',
  'what',
  'when',
  'limits',
  'acceptedBy',
  'question',
  'finding',
  'level',
]);

function textsIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(textsIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => {
    if (key === 'values') return Object.entries(part as object).map(([name, of]) => `${name} ${of}`);
    return typeof part === 'string' ? (typed.has(key) && part !== '' ? [part] : []) : textsIn(part);
  });
}
