import type { Intake } from '../../../shared/contract/ticket.ts';

/**
 * The intake as the log keeps it. The log never forgets and goes into every packet, so whoever called is in it by
 * relation only; name and telephone number stay on the ticket.
 */
export function withoutContact<Facts extends Pick<Intake, 'reporter'>>(intake: Facts) {
  return { ...intake, reporter: { relation: intake.reporter.relation } };
}
