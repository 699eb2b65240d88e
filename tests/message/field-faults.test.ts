import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { chain, settings, videoFormat } from '../../shared/contract/chain.ts';
import { ticketCommand } from '../../shared/contract/commands.ts';
import { handle, organisationSettings } from '../../shared/contract/organisation.ts';
import { email } from '../../shared/contract/people.ts';
import { planQuery } from '../../shared/contract/plan.ts';
import { id, instant, line, placeId, reason } from '../../shared/contract/primitives.ts';
import { formatText } from '../../shared/contract/signal.ts';
import { siteInput } from '../../shared/contract/site.ts';
import { codes } from '../../shared/message/codes/index.ts';
import { fieldFaults } from '../../shared/message/index.ts';

function faultsOf(schema: z.ZodType, input: unknown) {
  const parsed = schema.safeParse(input);
  return parsed.success ? [] : fieldFaults(parsed.error.issues, input);
}
const form = z.object({
  line,
  reason,
  count: z.int().min(1).max(9),
  share: z.number().gt(0).lt(1),
  half: z.number().multipleOf(0.5),
  kind: z.enum(['one', 'two']),
  lanes: z.union([z.literal(3), z.literal(4)]),
  either: z.union([z.string(), z.number()]),
  list: z.array(z.boolean()).min(1).max(2),
  named: z.record(placeId, z.number()),
  day: z.iso.date(),
  id,
  instant,
  email,
  placeId,
  handle,
  settings,
  formatText,
  strict: z.strictObject({}),
});

const tooManySettings = Object.fromEntries(Array.from({ length: 501 }, (_, at) => [`s${at}`, 'on']));

describe('what a schema finds wrong', () => {
  it.each([
    ['line', undefined, 'fieldMissing', {}],
    ['line', 4, 'fieldNotText', {}],
    ['line', ' ', 'fieldEmpty', {}],
    ['line', 'x'.repeat(201), 'fieldTooLong', { most: 200 }],
    ['reason', 'no', 'fieldTooShort', { least: 3 }],
    ['count', 'three', 'fieldNotNumber', {}],
    ['count', 1.5, 'fieldNotWhole', {}],
    ['count', 0, 'fieldTooSmall', { least: 1 }],
    ['count', 10, 'fieldTooLarge', { most: 9 }],
    ['share', 0, 'fieldNotAbove', { bound: 0 }],
    ['share', 1, 'fieldNotBelow', { bound: 1 }],
    ['half', 0.3, 'fieldNotMultiple', { of: 0.5 }],
    ['kind', 'three', 'fieldNotOneOf', { allowed: ['one', 'two'] }],
    ['lanes', 5, 'fieldNotOneOf', { allowed: ['3', '4'] }],
    ['either', true, 'fieldFitsNone', {}],
    ['list', 'x', 'fieldNotList', {}],
    ['list', [], 'fieldTooFew', { least: 1 }],
    ['list', [true, true, true], 'fieldTooMany', { most: 2 }],
    ['named', [], 'fieldNotObject', {}],
    ['named', { '/': 1 }, 'fieldKeyMisfit', {}],
    ['day', 'today', 'fieldNotDate', {}],
    ['id', 'x', 'fieldNotId', {}],
    ['instant', 'noon', 'fieldNotMoment', {}],
    ['instant', '1830-01-01T00:00:00Z', 'fieldMomentFar', { from: 1990, before: 2200 }],
    ['email', 'x', 'fieldNotEmail', {}],
    ['placeId', '-x', 'fieldNotPlaceId', {}],
    ['placeId', 'x'.repeat(65), 'fieldTooLong', { most: 64 }],
    ['handle', 'The Firm', 'fieldNotHandle', {}],
    ['settings', tooManySettings, 'fieldTooMany', { most: 500 }],
    ['formatText', '4k', 'fieldNotVideoFormat', {}],
    ['formatText', '0x2160p60/rgb/8', 'fieldNotVideoFormat', {}],
    ['strict', { dragon: 1 }, 'fieldUnknownKeys', { keys: ['dragon'] }],
  ] as const)('in %s, %o is %s', (field, value, code, values) => {
    const faults = faultsOf(form, { [field]: value }).filter(({ pointer }) =>
      pointer.startsWith(`/${field}`),
    );
    expect(faults[0]).toMatchObject({ code, values });
  });

  it('is told with its place as a JSON pointer (RFC 6901)', () => {
    const faults = faultsOf(organisationSettings, { faultModel: { 'a/b~c': 'x' } });
    expect(faults.map(({ pointer }) => pointer)).toEqual(['/faultModel/a~1b~0c']);
    expect(faultsOf(siteInput, [])).toMatchObject([{ pointer: '', code: 'fieldNotObject' }]);
  });

  it.each([
    ['a command', ticketCommand],
    ['a chain', chain],
    ['a site', siteInput],
    ['settings', organisationSettings],
    ['a format', videoFormat],
    ['a question for the plan', planQuery],
  ])('has a message, whatever comes as %s', (_name, schema) => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom('type', 'client', 'devices', 'kit', 'x'), (value, key) => {
        for (const input of [value, { [key]: value }])
          for (const { code, values } of faultsOf(schema, input)) {
            expect(Object.keys(codes)).toContain(code);
            expect(Object.keys(values)).toEqual(Object.keys(codes[code as keyof typeof codes]));
          }
      }),
    );
  });
});
