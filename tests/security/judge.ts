import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { nameOf, type Operation } from './operations.ts';

export type Reply = {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly payload: string;
};

// Formats are the contract's own business, whose patterns stand beside them.
const ajv = new Ajv2020({ strict: false, validateFormats: false });
/** By the schema's text: many operations answer with the same, and a ticket's takes a second to make ready. */
const validators = new Map<string, ValidateFunction>();
const texts = new WeakMap<object, string>();
function faultsBy(schema: object, value: unknown): string | null {
  const text = texts.get(schema) ?? JSON.stringify(schema);
  texts.set(schema, text);
  const validate = validators.get(text) ?? ajv.compile(schema);
  validators.set(text, validate);
  return validate(value) ? null : ajv.errorsText(validate.errors);
}

/**
 * What is wrong with a reply by the document that describes the API; null when nothing is. A refusal is a problem
 * document (RFC 9457), a success is one that the operation is said to have, and neither is our own fault (5xx).
 */
export function faultOf(operation: Operation, reply: Reply): string | null {
  const { status, payload } = reply;
  const described = operation.replies[status];
  const isRefusal = status >= 400 && described === undefined;
  const fault =
    status >= 500
      ? 'our own fault'
      : isRefusal
        ? problemFault(operation, reply)
        : successFault(operation, reply);
  return fault === null
    ? null
    : `${nameOf(operation)} answered ${status}: ${fault}\n${payload.slice(0, 500)}`;
}

function problemFault({ method, replies }: Operation, { status, headers, payload }: Reply): string | null {
  if (method === 'head') return payload === '' ? null : 'a body for HEAD';
  if (mediaTypeOf(headers) !== problem) return `${mediaTypeOf(headers)} is no problem document`;
  const schema = replies.default?.content?.[problem]?.schema;
  const body = JSON.parse(payload) as { status?: number };
  if (body.status !== status) return `the problem says ${body.status}`;
  return schema === undefined ? 'no description of problems' : faultsBy(schema, body);
}

function successFault({ method, replies }: Operation, { status, headers, payload }: Reply): string | null {
  const described = replies[status];
  if (described === undefined) return 'is not described';
  const contents = Object.entries(described.content ?? {});
  if (payload === '' && (contents.length === 0 || status === 304 || method === 'head')) return null;
  const found = contents.find(([type]) => matches(type, mediaTypeOf(headers)));
  if (found === undefined) return `${mediaTypeOf(headers)} is not described`;
  return found[0] === 'application/json' ? faultsBy(found[1].schema, JSON.parse(payload)) : null;
}

const problem = 'application/problem+json';
const mediaTypeOf = (headers: Reply['headers']): string =>
  String(headers['content-type'] ?? '').split(';', 1)[0] ?? '';
const matches = (range: string, type: string): boolean =>
  range === '*/*' || range === type || (range.endsWith('/*') && type.startsWith(range.slice(0, -1)));
