import { z } from 'zod';
import { pointerStep, replacedIn } from './json-pointer.ts';

/** What a person typed in words of their own: it may say something of somebody, and so can be erased. */
const personTexts = z.registry<{ by: 'person' }>();

/** Marks a field as such, once, where its form is defined; what is built on the form (`.min()`, `.default()`) is marked too. */
export function personText<Form extends z.ZodType<string>>(form: Form): Form {
  personTexts.add(form, { by: 'person' });
  return form;
}

/** A text by its place in a document (a JSON pointer, RFC 6901). */
export type TextAt = { readonly pointer: string; readonly text: string };

/**
 * Every text of persons in a document, found by the form that the document has. Empty texts are left out, and so is
 * what the form does not describe.
 */
export const personTextsIn = (form: z.ZodType, document: unknown): TextAt[] =>
  textsAt(form as unknown as Form, document, '');

type Form = z.core.$ZodTypes;

function textsAt(form: Form, value: unknown, pointer: string): TextAt[] {
  if (value === null || value === undefined) return [];
  if (personTexts.get(form) !== undefined) {
    return typeof value === 'string' && value !== '' ? [{ pointer, text: value }] : [];
  }
  const { def } = form._zod;
  const inside = (step: string | number, part: z.core.$ZodType): TextAt[] =>
    textsAt(part as Form, (value as Record<string | number, unknown>)[step], pointer + pointerStep(step));
  switch (def.type) {
    case 'object':
      return Object.entries(def.shape).flatMap(([key, part]) => inside(key, part));
    case 'array':
      return Array.isArray(value) ? value.flatMap((_, index) => inside(index, def.element)) : [];
    case 'record':
      return Object.keys(value).flatMap((key) => inside(key, def.valueType));
    case 'union': {
      const fitting = def.options.filter((option) => z.safeParse(option, value).success);
      // Where none fits, a bound may have changed since: rather too many texts than one left out.
      const options = fitting.length > 0 ? fitting : def.options;
      return onlyOnce(options.flatMap((option) => textsAt(option as Form, value, pointer)));
    }
    case 'intersection':
      return onlyOnce([def.left, def.right].flatMap((part) => textsAt(part as Form, value, pointer)));
    case 'pipe':
      return textsAt(def.in as Form, value, pointer);
    case 'lazy':
      return textsAt(def.getter() as Form, value, pointer);
    case 'optional':
    case 'nullable':
    case 'default':
    case 'prefault':
    case 'nonoptional':
    case 'readonly':
    case 'catch':
      return textsAt(def.innerType as Form, value, pointer);
    default:
      return [];
  }
}

const onlyOnce = (texts: readonly TextAt[]): TextAt[] => [
  ...new Map(texts.map((one) => [one.pointer, one])).values(),
];

/** A copy of a document in which one text stands for another wherever a person's text is just that. */
export function withTextReplaced<Document>(
  form: z.ZodType,
  document: Document,
  { text, by }: { readonly text: string; readonly by: string },
): Document {
  const equal = new Set(
    personTextsIn(form, document).flatMap((one) => (one.text === text ? [one.pointer] : [])),
  );
  return replacedIn(document, (_, pointer) => (equal.has(pointer) ? by : undefined)) as Document;
}
