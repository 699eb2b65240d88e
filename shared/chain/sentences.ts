/** Names in a row: `a`, `a and b`, `a, b and c`; or the same with `or`. */
export function listed(names: readonly string[], word: 'and' | 'or' = 'and'): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${word} ${names.at(-1)}`;
}

export function sentenceStart(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
