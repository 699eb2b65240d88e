/** One step of a JSON pointer (RFC 6901) as it is written there. */
export const pointerStep = (key: string | number): string =>
  `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`;

type Replacement = (value: unknown, pointer: string) => unknown;

/** A copy of a JSON document in which each value is what `replacement` gives for it; undefined leaves it as it is. */
export function replacedIn(document: unknown, replacement: Replacement, pointer = ''): unknown {
  const other = replacement(document, pointer);
  if (other !== undefined) return other;
  if (Array.isArray(document)) {
    return document.map((item, index) => replacedIn(item, replacement, pointer + pointerStep(index)));
  }
  if (typeof document !== 'object' || document === null) return document;
  return Object.fromEntries(
    Object.entries(document).map(([key, item]) => [
      key,
      replacedIn(item, replacement, pointer + pointerStep(key)),
    ]),
  );
}

/** What stands at a JSON pointer; undefined where nothing does. */
export const valueAt = (document: unknown, pointer: string): unknown =>
  pointer
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'))
    .reduce<unknown>(
      (value, step) =>
        typeof value === 'object' && value !== null
          ? (value as Readonly<Record<string, unknown>>)[step]
          : undefined,
      document,
    );
