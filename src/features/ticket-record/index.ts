export { anchorFiles, readAnchorFile } from './anchor-file.ts';
export { anchorFolder, keepAnchors, writeAnchors } from './anchors.ts';
export { openChangeElsewhere, writeChanges } from './changes.ts';
export { checkAnchors } from './check-anchors.ts';
export { type ClosedCase, closedCases } from './closed-cases.read.ts';
export { eraseTexts, type TextOnLog, type TextPlace, textOnLog } from './erase.ts';
export { type ErasedOnLog, erasedTextsOf } from './erased.read.ts';
export type { FactType } from './facts.ts';
export { keepSnapshotsCurrent } from './keep-current.ts';
export { type NamedEvent, namedEventsOf } from './log.read.ts';
export {
  hashedForm,
  hashOf,
  type LoggedEvent,
  loggedEventsOf,
  noPreviousHash,
  withTexts,
} from './log.ts';
export { logFileNames, logFiles } from './log-files.ts';
export { pastWithWord } from './past-with-word.ts';
export { type RebuiltBatch, rebuildTickets } from './rebuild.ts';
export { LogDoesNotReplayError, logAsReadToday, replayLog } from './replay-log.ts';
export { digestOf, type TextOfEvent } from './sealed-text.ts';
export { isSignedBy, signaturesOf } from './signature.ts';
export { columnsOf, readSnapshot, refuseNewerTickets } from './snapshot.ts';
export type { Tenancy } from './tenancy.ts';
export {
  escalatedTickets,
  findTicket,
  type LockedTicket,
  lockTicket,
  type ReadTicket,
  type TicketHead,
  type TicketRow,
  withNames,
  withoutSearchText,
} from './ticket.read.ts';
export { ticketBatches } from './ticket-batches.ts';
export {
  dueIn,
  findCase,
  hasTicket,
  intakeOf,
  intakeWithout,
  noTicket,
  openTicketsAt,
  type RowToCheck,
  rowToCheck,
  type TicketCase,
  withIntake,
} from './ticket-row.ts';
export { insertTicket, type LaterColumns, writeEvents } from './write.ts';
