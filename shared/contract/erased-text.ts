// Apart from the schemas: the phone loads this file and not the schema library.

/** When a text was erased (UTC, ISO 8601), and the member who did. */
export type Erasure = { readonly at: string; readonly by: string };

/*
 * What stands in the place of an erased text. It is a text itself, so that whatever holds one holds this; U+FFFC is
 * Unicode's OBJECT REPLACEMENT CHARACTER, for something that is not in the text (The Unicode Standard, section 23.8).
 */
const erasedForm = /^\uFFFCerased (\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z) ([0-9a-f-]{36})$/;
export const erasedText = ({ at, by }: Erasure): string => `\uFFFCerased ${at} ${by}`;

const erasedInside = new RegExp(erasedForm.source.slice(1, -1), 'g');
/** A text in which each erased one, wherever it stands inside, is told by words. */
export const withErasuresTold = (text: string, words: (erasure: Erasure) => string): string =>
  text.replaceAll(erasedInside, (_, at: string, by: string) => words({ at, by }));

/** Null for a text that is still there. */
export function erasureOf(text: string): Erasure | null {
  const [, at, by] = erasedForm.exec(text) ?? [];
  return at === undefined || by === undefined ? null : { at, by };
}
