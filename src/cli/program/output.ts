import { english } from '../../../shared/message/en/index.ts';
import { type Message, messageText } from '../../../shared/message/index.ts';

/** What the command line says, it says in English and in UTC. */
export const inEnglish = (said: Message): string => messageText(said, english, 'UTC');

/** Messages anywhere in a value, each with its sentence beside code and values, for the programs that read it. */
export function withSentences(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withSentences);
  if (typeof value !== 'object' || value === null) return value;
  const inner = Object.fromEntries(Object.entries(value).map(([key, part]) => [key, withSentences(part)]));
  return isMessage(value) ? { ...inner, text: inEnglish(value) } : inner;
}

const isMessage = (value: object): value is Message =>
  'code' in value && typeof value.code === 'string' && 'values' in value && typeof value.values === 'object';

/** Waits for the reader of a pipe, so that thousands of lines never pile up in memory. */
export function print(content: string | Uint8Array): Promise<void> {
  const bytes = typeof content === 'string' ? `${content}\n` : content;
  return new Promise((resolve) => process.stdout.write(bytes, () => resolve()));
}

/** To the standard error, so that what was asked for stays alone on the other. */
export const complain = (program: string, said: string): void => console.error(`${program}: ${said}`);

/** A reader that has seen enough, as `head` does, is no failure. */
export function stopWhenNobodyReads(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(0);
  });
}
