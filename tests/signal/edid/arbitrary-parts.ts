import fc from 'fast-check';

export const int = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
export const byte = int(0, 255);

export const bytesOf = (minLength: number, maxLength: number): fc.Arbitrary<Uint8Array> =>
  fc.uint8Array({ minLength, maxLength });

const characters = (from: number, to: number) => int(from, to).map((code) => String.fromCharCode(code));

export const printable = (maxLength: number): fc.Arbitrary<string> =>
  fc.array(characters(0x20, 0x7e), { maxLength }).map((parts) => parts.join(''));

export const letters = (length: number): fc.Arbitrary<string> =>
  fc.array(characters(0x41, 0x5a), { minLength: length, maxLength: length }).map((parts) => parts.join(''));

/** A record of that many yes or no. */
export const flags = <K extends string>(...names: K[]): fc.Arbitrary<Record<K, boolean>> =>
  fc
    .array(fc.boolean(), { minLength: names.length, maxLength: names.length })
    .map((values) => Object.fromEntries(names.map((name, i) => [name, values[i]])) as Record<K, boolean>);

/** Takes as many items as there is room for. */
export function fitting<T>(items: readonly T[], hasRoom: (taken: readonly T[]) => boolean): T[] {
  const taken: T[] = [];
  for (const item of items) if (hasRoom([...taken, item])) taken.push(item);
  return taken;
}

export const listOf = <T>(item: fc.Arbitrary<T>, length: number): fc.Arbitrary<T[]> =>
  fc.array(item, { minLength: length, maxLength: length });
