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
  if (entry.kind === 'command') {
    const { type, happenedAt, ...rest } = entry.command;
    return textsIn('mode' in rest ? { ...rest, mode: null } : rest);
  }
  return textsIn(entry.reading.reading);
}

const isId = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;
function textsIn(value: unknown): string {
  if (typeof value === 'string') return isId.test(value) ? '' : value;
  if (typeof value === 'number') return String(value);
  if (typeof value !== 'object' || value === null) return '';
  return Object.values(value)
    .map(textsIn)
    .filter((text) => text !== '')
    .join(' · ');
}
