import type { z } from 'zod';
import { isMisfit } from '../contract/misfits.ts';
import { type Message, message } from './message.ts';

/** What is wrong with one place of a document: a JSON pointer (RFC 6901), and why. */
export type FieldFault = Message & { pointer: string };

type Issue = z.core.$ZodIssue;
type IssueOf<Code extends Issue['code']> = Extract<Issue, { code: Code }>;

/** A path through a document as a JSON pointer. */
export const pointerTo = (path: readonly PropertyKey[]): string =>
  path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/**
 * What a schema finds wrong, each with its place and a message.
 *
 * @param input the whole that was parsed: a place where there is nothing is told as missing
 */
export const fieldFaults = (issues: readonly Issue[], input: unknown): FieldFault[] =>
  issues.map((issue) => ({
    pointer: pointerTo(issue.path),
    ...(valueAt(input, issue.path) === undefined ? message('fieldMissing') : fault(issue)),
  }));

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce(
    (inner: unknown, part) =>
      typeof inner === 'object' && inner !== null && Object.hasOwn(inner, part)
        ? (inner as Record<PropertyKey, unknown>)[part]
        : undefined,
    value,
  );

function fault(issue: Issue): Message {
  switch (issue.code) {
    case 'invalid_type':
      return ofType[issue.expected] ?? message('fieldOfWrongType');
    case 'too_small':
      return tooSmall(issue);
    case 'too_big':
      return tooBig(issue);
    case 'invalid_format':
      return ofFormat[issue.format] ?? misfitOf(issue, {});
    case 'custom':
      return misfitOf(issue, issue.params ?? {});
    case 'invalid_value':
      return oneOf(issue.values);
    case 'invalid_union':
      return unionFault(issue);
    case 'not_multiple_of':
      return message('fieldNotMultiple', { of: issue.divisor });
    case 'unrecognized_keys':
      return message('fieldUnknownKeys', { keys: issue.keys });
    default:
      return message('fieldKeyMisfit');
  }
}

const misfitOf = ({ message: code }: Issue, values: Message['values']): Message =>
  isMisfit(code) ? { code, values } : message('fieldOfWrongForm');

const ofType: Record<string, Message | undefined> = {
  string: message('fieldNotText'),
  number: message('fieldNotNumber'),
  int: message('fieldNotWhole'),
  boolean: message('fieldNotFlag'),
  array: message('fieldNotList'),
  object: message('fieldNotObject'),
  record: message('fieldNotObject'),
};
const ofFormat: Record<string, Message | undefined> = {
  email: message('fieldNotEmail'),
  uuid: message('fieldNotId'),
  datetime: message('fieldNotMoment'),
  date: message('fieldNotDate'),
};

function tooSmall({ origin, minimum, inclusive }: IssueOf<'too_small'>): Message {
  const least = Number(minimum);
  if (origin === 'string') return least === 1 ? message('fieldEmpty') : message('fieldTooShort', { least });
  if (origin === 'array' || origin === 'set') return message('fieldTooFew', { least });
  return inclusive === false
    ? message('fieldNotAbove', { bound: least })
    : message('fieldTooSmall', { least });
}

function tooBig({ origin, maximum, inclusive }: IssueOf<'too_big'>): Message {
  const most = Number(maximum);
  if (origin === 'string') return message('fieldTooLong', { most });
  if (origin === 'array' || origin === 'set') return message('fieldTooMany', { most });
  return inclusive === false ? message('fieldNotBelow', { bound: most }) : message('fieldTooLarge', { most });
}

const oneOf = (values: readonly unknown[]): Message =>
  message('fieldNotOneOf', { allowed: values.map(String) });

/** Where each alternative is a fixed value, they are told. */
function unionFault({ errors }: IssueOf<'invalid_union'>): Message {
  const values = errors.flatMap(([only, ...others]) =>
    only?.code === 'invalid_value' && only.path.length === 0 && others.length === 0 ? only.values : [],
  );
  return values.length > 0 && values.length >= errors.length ? oneOf(values) : message('fieldFitsNone');
}
