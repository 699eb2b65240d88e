/** Markup that is safe to put into a page: made by `html`, or trusted because we wrote it. */
export class Html {
  readonly markup: string;
  constructor(markup: string) {
    this.markup = markup;
  }
}

type Value = Html | string | number | null | undefined | false | readonly Value[];

/** A template whose values are escaped, so that nothing that somebody typed becomes markup. */
export function html(parts: TemplateStringsArray, ...values: readonly Value[]): Html {
  return new Html(
    parts.reduce(
      (whole, part, index) => whole + part + (index < values.length ? shown(values[index]) : ''),
      '',
    ),
  );
}

function shown(value: Value): string {
  if (value === null || value === undefined || value === false) return '';
  if (value instanceof Html) return value.markup;
  if (typeof value === 'object') return value.map(shown).join('');
  return escaped(String(value));
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Also drops control characters, which HTML has no way to write, and those that turn the direction of writing,
 * which could make a line read as something else.
 */
const escaped = (text: string): string =>
  text
    .replaceAll(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/gu, (control) =>
      /[\t\n\r]/.test(control) ? control : '',
    )
    .replaceAll(/[&<>"']/g, (character) => entities[character] ?? '');
