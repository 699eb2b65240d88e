import type { FastifySchemaCompiler } from 'fastify';
import { z } from 'zod';
import { type FieldFault, fieldFaults, message } from '../../shared/message/index.ts';
import { type Refused, refused } from './problem.ts';

/** A part of a request that doesn't fit its schema. */
export class MisfitError extends Error {
  override readonly name = 'MisfitError';
  readonly faults: readonly FieldFault[];
  /** The framework says which: `body`, `params`, `querystring`, `headers`. */
  readonly validationContext?: string;

  constructor(faults: readonly FieldFault[]) {
    super('a request does not fit its description');
    this.faults = faults;
  }
}

/** Puts what comes with a request through the contract's schemas. */
export const validatorCompiler: FastifySchemaCompiler<z.ZodType> =
  ({ schema }) =>
  (input) => {
    const parsed = z.safeParse(schema, input);
    return parsed.success
      ? { value: parsed.data }
      : { error: new MisfitError(fieldFaults(parsed.error.issues, input)) };
  };

/**
 * @param context the part of the request: in the body, places are JSON pointers (RFC 6901, where the whole is the empty
 *   pointer); in address, query and headers they are the names there
 */
export function invalidInput(faults: readonly FieldFault[], context: string | undefined): Refused {
  const inBody = context === undefined || context === 'body';
  return refused('invalid-input', message('fieldsDoNotFit'), {
    errors: faults.map((fault) =>
      inBody ? fault : { ...fault, pointer: fault.pointer.split('/')[1] ?? '' },
    ),
  });
}
