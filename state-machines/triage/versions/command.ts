import type { TicketCommand } from '../../../shared/contract/commands.ts';
import { watchNotSaid } from './1/record-as-today.ts';
import { symptomAsToday } from './1/symptom.ts';

/** A command that a phone kept under an earlier version, with what that version did not ask for left unsaid. */
export function commandAsToday(kept: TicketCommand): TicketCommand {
  switch (kept.type) {
    case 'startWatch':
      return { ...watchNotSaid, ...kept };
    case 'amendIntake':
      return { ...kept, symptom: { ...symptomAsToday(kept.symptom), ...kept.symptom } };
    default:
      return kept;
  }
}
