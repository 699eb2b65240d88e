import type { Problem } from '../../../shared/contract/problem.ts';

/** What the API says of one place of the document that was sent, by JSON pointer (RFC 6901); undefined: nothing. */
export function faultAt(problem: Problem | null, pointer: string): string | undefined {
  const texts = (problem?.errors ?? []).filter((error) => error.pointer === pointer).map(({ text }) => text);
  return texts.length === 0 ? undefined : texts.join(' · ');
}

/** What it says of a part as a whole, and of places in it that no field stands for. */
export function faultsWithin(problem: Problem | null, pointer: string, fields: readonly string[]): string[] {
  const shown = fields.map((field) => `${pointer}/${field}`);
  return (problem?.errors ?? [])
    .filter((error) => error.pointer === pointer || error.pointer.startsWith(`${pointer}/`))
    .filter((error) => !shown.includes(error.pointer))
    .map(({ text }) => text);
}
