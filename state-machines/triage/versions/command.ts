import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { watchNotSaid } from './1/record-as-today.ts';
import { type SymptomThen, symptomAsToday } from './1/symptom.ts';

/** What version 1 sent has neither a pattern nor today's kinds; what is sent today has both. */
const amendedAsToday = (kept: Symptom | SymptomThen): Symptom =>
  'pattern' in kept ? kept : symptomAsToday(kept);

/** A command that a phone kept under an earlier version, with what that version did not ask for left unsaid. */
export function commandAsToday(kept: TicketCommand): TicketCommand {
  switch (kept.type) {
    case 'startWatch':
      return { ...watchNotSaid, ...kept };
    case 'amendIntake':
      return { ...kept, symptom: amendedAsToday(kept.symptom) };
    default:
      return kept;
  }
}
