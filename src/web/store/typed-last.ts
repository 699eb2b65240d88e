/**
 * What was typed into a form last, kept at once: a page that is closed or reloaded in the same moment takes a write to
 * the device's database that is still under way with it. It lies here only until that write is through.
 */
const prefixOf = (memberId: string): string => `halfsplit-typed-${memberId} `;

/** @returns what to call once the same draft is in the database: it takes away this draft, and no later one */
export function holdTyped(memberId: string, name: string, draft: object): () => void {
  const key = prefixOf(memberId) + name;
  const text = JSON.stringify(draft);
  try {
    localStorage.setItem(key, text);
  } catch {
    // A browser without room, or that keeps nothing: the database alone has it then.
  }
  return () => {
    if (localStorage.getItem(key) === text) localStorage.removeItem(key);
  };
}

/** What did not get into the database any more; null where everything did. */
export function typedLast(memberId: string, name: string): object | null {
  const text = localStorage.getItem(prefixOf(memberId) + name);
  if (text === null) return null;
  const kept: unknown = JSON.parse(text);
  return typeof kept === 'object' ? kept : null;
}

export const dropTyped = (memberId: string, name: string): void =>
  localStorage.removeItem(prefixOf(memberId) + name);

/** Takes away whatever of a member's lies here. */
export function dropAllTyped(memberId: string): void {
  for (const key of Object.keys(localStorage))
    if (key.startsWith(prefixOf(memberId))) localStorage.removeItem(key);
}
