import type { TicketCommand } from '../../shared/contract/commands.ts';

/** A command with the ids filled in that its sender left out. */
export function withIds(command: TicketCommand, newId: () => string) {
  switch (command.type) {
    case 'startWatch':
      return { ...command, watchId: command.watchId ?? newId() };
    case 'recordOccurrence':
      return { ...command, occurrenceId: command.occurrenceId ?? newId() };
    case 'confirmOccurrence':
      return { ...command, occurrenceId: command.occurrenceId ?? newId() };
    case 'declareChange':
    case 'enterLateChange':
      return { ...command, changeId: command.changeId ?? newId() };
    case 'recordLook':
      return { ...command, lookId: command.lookId ?? newId() };
    case 'leaveInPlace':
      return { ...command, unattendedId: command.unattendedId ?? newId() };
    case 'directStep':
      return { ...command, requestId: command.requestId ?? newId() };
    case 'askForMore':
      return {
        ...command,
        requests: command.requests.map((one) => ({ ...one, requestId: one.requestId ?? newId() })),
      };
    default:
      return command;
  }
}
