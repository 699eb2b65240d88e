import fc from 'fast-check';

/** As much of JSON Schema (2020-12) as the OpenAPI document uses. */
export type Schema = {
  readonly type?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Schema | boolean;
  readonly propertyNames?: Schema;
  readonly items?: Schema;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly format?: string;
  readonly pattern?: string;
};

/** Values that exist in the database, by their format: what is made up alone finds nothing there. */
export type Known = { readonly uuids: readonly string[]; readonly words: readonly string[] };

/** What breaks programs more often than other values do. */
export const nasty: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(
    ...[
      '',
      ' ',
      '\u0000',
      '\ud800',
      '../../etc',
      "'; drop table site; --",
      '9'.repeat(400),
      '%',
      '{id}',
      '\u202e',
    ],
    ...[0, -1, 1.5, 2 ** 31, 2 ** 53, 1e308, -0],
    ...[null, true, [], {}],
    ...['0000-01-01T00:00:00Z', '2026-02-30T10:00:00Z', '9999-12-31T23:59:59Z', '2026-11-25'],
  ),
  fc.uuid(),
  fc.jsonValue({ maxDepth: 3 }),
);

/** A value that a schema describes, with something that it does not describe here and there. */
export function valueBy(schema: Schema, known: Known, depth = 0): fc.Arbitrary<unknown> {
  const fitting = fittingOf(schema, known, depth);
  return fc.oneof({ weight: 24, arbitrary: fitting }, { weight: 1, arbitrary: nasty });
}

function fittingOf(schema: Schema, known: Known, depth: number): fc.Arbitrary<unknown> {
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices !== undefined) return fc.oneof(...choices.map((choice) => valueBy(choice, known, depth)));
  if (schema.allOf !== undefined)
    return fc
      .tuple(...schema.allOf.map((part) => valueBy(part, known, depth)))
      .map((parts) => Object.assign({}, ...parts));
  switch (schema.type) {
    case 'object':
      return objectOf(schema, known, depth);
    case 'array':
      return fc.array(valueBy(schema.items ?? {}, known, depth + 1), {
        minLength: schema.minItems ?? 0,
        maxLength: Math.max(schema.minItems ?? 0, Math.min(schema.maxItems ?? 3, depth > 3 ? 1 : 3)),
      });
    case 'string':
      return textOf(schema, known);
    case 'integer':
    case 'number':
      return numberOf(schema);
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return fc.jsonValue({ maxDepth: 2 });
  }
}

function objectOf(schema: Schema, known: Known, depth: number): fc.Arbitrary<unknown> {
  const { properties = {}, required = [], additionalProperties, propertyNames } = schema;
  const parts = Object.fromEntries(
    Object.entries(properties).map(([name, part]) => [name, valueBy(part, known, depth + 1)]),
  );
  // What may be left out is left out more often the deeper it lies: commands are wide, and would all be huge.
  const given = fc.record(parts, { requiredKeys: [...required] as never[] }).map((value) => value as object);
  if (typeof additionalProperties !== 'object') return given;
  const names = textOf(propertyNames ?? {}, known).map(String);
  return fc
    .tuple(given, fc.dictionary(names, valueBy(additionalProperties, known, depth + 1), { maxKeys: 2 }))
    .map(([one, more]) => ({ ...more, ...one }));
}

function textOf(schema: Schema, known: Known): fc.Arbitrary<string> {
  const { minLength = 0, maxLength = 40 } = schema;
  switch (schema.format) {
    case 'uuid':
      return fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...known.uuids) }, fc.uuid());
    case 'date-time':
      return fc
        .date({ min: new Date('1989-01-01'), max: new Date('2201-01-01'), noInvalidDate: true })
        .map((date) => date.toISOString());
    case 'email':
      return fc.constantFrom('somebody@home-firm.example', 'a@b.example', 'x+y@z.example');
    default:
  }
  if (schema.pattern !== undefined) return fc.stringMatching(new RegExp(schema.pattern));
  const free = fc.string({
    minLength,
    maxLength: Math.max(minLength, Math.min(maxLength, 60)),
    unit: 'grapheme',
  });
  return fc.oneof({ weight: 2, arbitrary: free }, fc.constantFrom(...known.words));
}

function numberOf({ type, minimum, maximum, exclusiveMinimum }: Schema): fc.Arbitrary<number> {
  const min = minimum ?? exclusiveMinimum ?? -1000;
  const max = maximum ?? Math.max(min + 1000, 1000);
  if (type === 'integer') {
    const [low, high] = [Math.max(min, Number.MIN_SAFE_INTEGER), Math.min(max, Number.MAX_SAFE_INTEGER)];
    return fc.oneof(
      fc.integer({ min: low, max: Math.min(high, low + 20) }),
      fc.integer({ min: low, max: high }),
    );
  }
  return fc.double({ min, max, noNaN: true, minExcluded: exclusiveMinimum !== undefined });
}
