import type { FileKind } from './content-type.ts';

/** What was read out of a file on arrival. */
export type Facts = Record<string, unknown>;

/** Facts of a file of this kind; null where there are none to read. */
export async function factsOf(_kind: FileKind, _path: string): Promise<Facts | null> {
  return null;
}
