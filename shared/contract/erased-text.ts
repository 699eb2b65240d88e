// Apart from the schemas: the phone loads this file and not the schema library.

/** When a text was erased (UTC, ISO 8601), and the member who did. */
export type Erasure = { readonly at: string; readonly by: string };

/*
 * What stands in the place of an erased text. It is a text itself, so that whatever holds one holds this; U+FFFC is
 * Unicode's OBJECT REPLACEMENT CHARACTER, for something that is not in the text (The Unicode Standard, section 23.8).
 */
const form = /\uFFFCerased (\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z) ([0-9a-f-]{36})/;
const whole = new RegExp(`^${form.source}$`);
const anywhere = new RegExp(form, 'g');
export const erasedText = ({ at, by }: Erasure): string => `\uFFFCerased ${at} ${by}`;

/** Null for a text that is still there. */
export function erasureOf(text: string): Erasure | null {
  const [, at, by] = whole.exec(text) ?? [];
  return at === undefined || by === undefined ? null : { at, by };
}

/** A text in pieces, in order: what is there of it, and what was erased inside of it, as where one was added to another. */
export function withErasuresApart(text: string): (string | Erasure)[] {
  const pieces: (string | Erasure)[] = [];
  let last = 0;
  for (const found of text.matchAll(anywhere)) {
    const [token, at = '', by = ''] = found;
    if (found.index > last) pieces.push(text.slice(last, found.index));
    pieces.push({ at, by });
    last = found.index + token.length;
  }
  if (last < text.length) pieces.push(text.slice(last));
  return pieces;
}

/** A text in which each erased one, wherever it stands inside, is told by words. */
export const withErasuresTold = (text: string, words: (erasure: Erasure) => string): string =>
  withErasuresApart(text)
    .map((piece) => (typeof piece === 'string' ? piece : words(piece)))
    .join('');

/** What a field to write in begins with: what is there of the text. */
export const typedBefore = (text: string): string => withErasuresTold(text, () => '');
