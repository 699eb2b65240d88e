/** Items in a row with a word before the last: `a`, `a and b`, `a, b and c`. */
export const joined = (items: readonly string[], word: string): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)}`;

/** With its first letter in upper case; a mark at the start is not a letter, and what somebody wrote stays as it is. */
export const startOf = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
