export { openChangeElsewhere, writeChanges } from './changes.ts';
export { type NamedEvent, namedEventsOf } from './log.read.ts';
export { hashOfEntry, type LoggedEvent, loggedEventsOf, noPreviousHash } from './log.ts';
export { findTicket, lockTicket, type TicketRow, withNames } from './ticket.read.ts';
export {
  columnsOf,
  findCase,
  hasTicket,
  intakeOf,
  noTicket,
  openTicketsAt,
  snapshotOf,
  type TicketCase,
  withIntake,
} from './ticket-row.ts';
export { insertTicket, writeEvent } from './write.ts';
