import type { Problem } from '../../../shared/contract/problem.ts';
import { storedMessage } from '../../../shared/message/stored.ts';
import { said } from '../words/sentence.tsx';

type FieldError = NonNullable<Problem['errors']>[number];

/** What is wrong with a field. A code without values is one of an earlier version, which sent its sentence. */
export const fieldFault = ({ code, values, text = '' }: FieldError): string =>
  said(values === undefined ? storedMessage(text) : { code, values }).text;

/** What the API says of one place of the document that was sent, by JSON pointer (RFC 6901); undefined: nothing. */
export function faultAt(problem: Problem | null, pointer: string): string | undefined {
  const faults = (problem?.errors ?? []).filter((error) => error.pointer === pointer).map(fieldFault);
  return faults.length === 0 ? undefined : faults.join(' · ');
}

/** What it says of a part as a whole, and of places in it that no field stands for. */
export function faultsWithin(problem: Problem | null, pointer: string, fields: readonly string[]): string[] {
  const shown = fields.map((field) => `${pointer}/${field}`);
  return (problem?.errors ?? [])
    .filter((error) => error.pointer === pointer || error.pointer.startsWith(`${pointer}/`))
    .filter((error) => !shown.includes(error.pointer))
    .map(fieldFault);
}
