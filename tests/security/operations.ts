import fc from 'fast-check';
import { type Known, nasty, type Schema, valueBy } from './schema-arbitrary.ts';

type Parameter = {
  readonly in: 'path' | 'query' | 'header';
  readonly name: string;
  readonly schema: Schema;
  readonly required?: boolean;
};
export type DescribedReply = {
  readonly content?: Readonly<Record<string, { readonly schema: object }>>;
};
export type Operation = {
  readonly method: string;
  /** As the document writes it: `/sites/{id}`. */
  readonly path: string;
  readonly parameters: readonly Parameter[];
  readonly body: Schema | null;
  readonly replies: Readonly<Record<string, DescribedReply>>;
  /** Whether anybody may use it. */
  readonly isOpen: boolean;
};
export type Document = { readonly paths: Readonly<Record<string, Readonly<Record<string, object>>>> };
type Described = {
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
  readonly responses: Operation['replies'];
  readonly 'x-roles': readonly string[];
};

export const nameOf = ({ method, path }: Operation): string => `${method.toUpperCase()} ${path}`;

/** Every operation of an OpenAPI document. */
export function operationsOf(document: Document): Operation[] {
  return Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, described]) => {
      const { parameters = [], requestBody, responses, 'x-roles': roles } = described as Described;
      const body = requestBody?.content['application/json']?.schema ?? null;
      return { method, path, parameters, body, replies: responses, isOpen: roles.includes('anyone') };
    }),
  );
}

/** A request as it goes out. */
export type Request = {
  readonly operation: Operation;
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly payload: string | null;
};

/** What requests are made with: ids by the first part of the paths that take them, and words that are found. */
export type Makings = Known & { readonly ids: Readonly<Record<string, readonly string[]>> };

/** Requests of an operation, most of them as it is described. */
export function requestOf(operation: Operation, makings: Makings): fc.Arbitrary<Request> {
  const query = operation.parameters.filter((one) => one.in === 'query');
  const filled = fc.tuple(
    pathOf(operation, makings),
    queryOf(query, makings),
    headersOf,
    bodyOf(operation, makings),
  );
  return filled.map(([path, words, headers, payload]) => ({
    operation,
    url: words === '' ? path : `${path}?${words}`,
    headers: payload === null ? headers : { 'content-type': 'application/json', ...headers },
    payload,
  }));
}

/** As it would stand in an address. JSON, since an object with a member `toString` has no text of its own. */
const asWord = (value: unknown): string => (typeof value === 'string' ? value : JSON.stringify(value));
const encoded = (value: unknown): string => {
  const word = asWord(value);
  return word.isWellFormed() ? encodeURIComponent(word) : '%ff';
};

function pathOf({ path }: Operation, { ids, uuids }: Makings): fc.Arbitrary<string> {
  const kind = path.split('/')[1] ?? '';
  const partOf = (name: string): fc.Arbitrary<string> => {
    const known = name === 'id' ? fc.constantFrom(...(ids[kind] ?? uuids)) : fc.constantFrom('1', '2');
    return fc.oneof(
      { weight: 12, arbitrary: known },
      { weight: 1, arbitrary: fc.uuid() },
      { weight: 1, arbitrary: nasty.map(encoded).map((word) => word || 'x') },
    );
  };
  const parts = path.split('/').map((part) => {
    const name = /^\{(\w+)\}$/.exec(part)?.[1];
    return name === undefined ? fc.constant(part) : partOf(name);
  });
  return fc.tuple(...parts).map((words) => words.join('/'));
}

function queryOf(parameters: readonly Parameter[], known: Known): fc.Arbitrary<string> {
  if (parameters.length === 0) return fc.constant('');
  const forms = Object.fromEntries(parameters.map(({ name, schema }) => [name, valueBy(schema, known)]));
  const needed = parameters.filter(({ required }) => required).map(({ name }) => name);
  return fc.record(forms, { requiredKeys: needed as never[] }).map((values) =>
    Object.entries(values)
      .map(([name, value]) => `${encodeURIComponent(name)}=${encoded(value)}`)
      .join('&'),
  );
}

const sometimes = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.oneof({ weight: 9, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary });
/** What Node lets a client send in a header. */
const visible = fc.stringMatching(/^[\x20-\x7e]{0,80}$/);

/** Headers beside the token; those that a write needs are there most of the time. */
const headersOf: fc.Arbitrary<Record<string, string>> = fc
  .record({
    'idempotency-key': fc.oneof({ weight: 30, arbitrary: fc.uuid() }, { weight: 1, arbitrary: visible }),
    'if-match': fc.oneof({ weight: 20, arbitrary: fc.constant('*') }, { weight: 1, arbitrary: visible }),
    'if-none-match': sometimes(fc.oneof(fc.constant('*'), visible)),
    'accept-language': sometimes(fc.oneof(fc.constantFrom('de', 'fr', 'de;q=0.5, en'), visible)),
    range: sometimes(
      fc.oneof(fc.constantFrom('bytes=0-3', 'bytes=-5', 'bytes=9999999-', 'lines=1-2'), visible),
    ),
    'content-type': sometimes(
      fc.oneof(fc.constantFrom('text/plain', 'multipart/form-data', 'application/json; x'), visible),
    ),
    'upload-metadata': sometimes(visible),
    'upload-length': sometimes(fc.oneof(fc.constantFrom('0', '5', '-1', '99999999999999999999'), visible)),
    'tus-resumable': sometimes(fc.constantFrom('1.0.0', '0.1')),
  })
  .map(
    (all) =>
      Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as Record<
        string,
        string
      >,
  );

function bodyOf({ body }: Operation, known: Known): fc.Arbitrary<string | null> {
  if (body === null)
    return sometimes(nasty.map((value) => JSON.stringify(value))).map((text) => text ?? null);
  const written = valueBy(body, known).map((value) => JSON.stringify(value));
  const broken = fc.constantFrom(
    '{',
    '',
    'null',
    '[]',
    '{"__proto__":{"x":1}}',
    '{"a":1,"a":2}',
    '\u0000',
    '[[[[',
  );
  return fc.oneof({ weight: 30, arbitrary: written }, { weight: 1, arbitrary: broken });
}
