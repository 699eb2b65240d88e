import './no-eval.ts';
import { type TicketCommand, ticketCommand } from '../../../shared/contract/commands.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { fieldFaults, message } from '../../../shared/message/index.ts';
import { problemOf } from './project.ts';

/**
 * Whether a step is one that the API takes at all, by the contract's own schema: a number out of range or a text that
 * is too long is said here and now, and not by the server hours later. Null where it fits.
 */
export function misfit(command: TicketCommand): Problem | null {
  const parsed = ticketCommand.safeParse(command);
  if (parsed.success) return null;
  return problemOf({
    type: 'invalid-input',
    said: message('fieldsDoNotFit'),
    errors: fieldFaults(parsed.error.issues, command),
  });
}
