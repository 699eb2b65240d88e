import type { Chain } from '../../../shared/contract/chain.ts';
import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { EvidenceRef } from '../../../shared/contract/evidence.ts';
import type { FirmwareLevel, Organisation } from '../../../shared/contract/organisation.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { type ProblemKind, problemStatuses } from '../../../shared/contract/problem-kinds.ts';
import { typeOfKind } from '../../../shared/contract/problem-type.ts';
import type { ChainAudit, ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { completeCommand, figuresIn } from '../../../state-machines/triage/complete-command.ts';
import { completeness } from '../../../state-machines/triage/completeness.ts';
import { allowedCommands, type Decision, decide } from '../../../state-machines/triage/decide.ts';
import { dueOf } from '../../../state-machines/triage/due.ts';
import type { CompleteCommand } from '../../../state-machines/triage/events.ts';
import { stateName, type TriageSnapshot } from '../../../state-machines/triage/evolve.ts';
// From the files themselves: the index would bring the planner along, which no step needs.
import { MACHINE_VERSION } from '../../../state-machines/triage/machine.ts';
import { shownOf } from '../../../state-machines/triage/shown.ts';
import { commandAsToday } from '../../../state-machines/triage/versions/command.ts';
import type { CommandEntry, OutboxEntry, ReadingEntry, UploadEntry } from '../store/outbox-entry.ts';

/** What the phone knows beside the ticket, for what the server adds to commands. Null: not read yet. */
export type Known = {
  member: { id: string; role: MemberRole };
  chain: ChainDocument | null;
  audit: ChainAudit | null;
  firmwareLevels: readonly FirmwareLevel[] | null;
  organisation: Pick<Organisation, 'settings' | 'version'> | null;
};

/** The ticket as it will be once everything that waits has arrived, and what of it would be refused by what is known. */
export type Projection = {
  readonly ticket: Ticket;
  /** How many entries of the outbox it holds. */
  readonly ahead: number;
  /** The first entry that the machine refuses already, without asking the server. */
  readonly refused: { readonly entry: OutboxEntry; readonly problem: Problem } | null;
};

/** The snapshot behind a ticket as the API shows it: its state's name is the machine's value, parts joined by dots. */
export function snapshotOf(ticket: Ticket): TriageSnapshot {
  const [outer = '', inner] = ticket.state.split('.', 2);
  return {
    machineVersion: MACHINE_VERSION,
    value: inner === undefined ? outer : { [outer]: inner },
    context: ticket.triage,
  };
}

/**
 * Runs the outbox's entries of a ticket through the triage machine, on top of the ticket that the server gave last.
 * The same machine decides here and there, so that the next step is on the screen at once, also without a connection.
 *
 * @param entries of this ticket, in order; those that were refused are left out, with all after them
 * @param now UTC, ISO 8601
 */
export function project(
  ticket: Ticket,
  entries: readonly OutboxEntry[],
  known: Known,
  now: string,
): Projection {
  let snapshot = snapshotOf(ticket);
  let ahead = 0;
  let refused: Projection['refused'] = null;
  for (const entry of entries) {
    if (entry.state === 'refused' || entry.state === 'conflict') break;
    const decision = decide(snapshot, completed(entry, known));
    if (!decision.accepted) {
      refused = { entry, problem: problemOf(decision.refusal) };
      break;
    }
    snapshot = decision.snapshot;
    ahead += 1;
  }
  return { ticket: shown(ticket, snapshot, known.member.role, now), ahead, refused };
}

/** What the machine makes of a command now, by what the phone knows. */
function tried(ticket: Ticket, command: TicketCommand, known: Known, now: string): Decision {
  const entry = { kind: 'command', id: crypto.randomUUID(), command, madeAt: now } as CommandEntry;
  return decide(snapshotOf(ticket), completed(entry, known));
}

/** Whether a command would be accepted now, by what the phone knows; the problem where not. */
export function wouldRefuse(
  ticket: Ticket,
  command: TicketCommand,
  known: Known,
  now: string,
): Problem | null {
  const decision = tried(ticket, command, known, now);
  return decision.accepted ? null : problemOf(decision.refusal);
}

/** The ticket once a command that would be accepted was; as it is, where it would not be. */
export function ticketAfter(ticket: Ticket, command: TicketCommand, known: Known, now: string): Ticket {
  const decision = tried(ticket, command, known, now);
  return decision.accepted ? shown(ticket, decision.snapshot, known.member.role, now) : ticket;
}

/**
 * A command with what it will come to by what the phone knows, so that the server does not decide otherwise unseen; the
 * problem where it would be refused.
 */
export function withShown(
  ticket: Ticket,
  command: TicketCommand,
  known: Known,
  now: string,
): { command: TicketCommand } | { problem: Problem } {
  const decision = tried(ticket, command, known, now);
  if (!decision.accepted) return { problem: problemOf(decision.refusal) };
  // An audit of another version than the command names was not what was shown.
  if (command.type === 'reviewAudit' && known.audit?.version !== command.chainVersion) return { command };
  const event = decision.events.find(({ type }) => type === command.type);
  const outcome = event === undefined ? null : shownOf(event);
  return {
    command: outcome === null ? command : ({ ...command, shown: outcome.shown } as TicketCommand),
  };
}

const shown = (ticket: Ticket, snapshot: TriageSnapshot, role: MemberRole, now: string): Ticket => ({
  ...ticket,
  state: stateName(snapshot),
  triage: snapshot.context,
  allowedNow: allowedCommands(snapshot, role, now),
  missing: completeness(snapshot.context),
  due: dueOf(snapshot.context),
});

/** What the API answers with, for a refusal of that kind. */
export const problemOf = ({
  type,
  ...said
}: { type: ProblemKind } & Omit<Problem, 'type' | 'title' | 'status'>): Problem => ({
  ...said,
  type: typeOfKind(type),
  status: problemStatuses[type],
});

const emptyChain: Chain = { name: '', devices: [], links: [], wantedFormats: [] };

function completed(entry: OutboxEntry, { member, chain, audit, ...known }: Known): CompleteCommand {
  const { id: by, role } = member;
  const envelope = { at: entry.madeAt, by, role };
  if (entry.kind !== 'command')
    return { type: 'evidenceAdded', evidence: evidenceOf(entry, by), ...envelope };
  // The outbox has filled ids in; what it has of older versions of this program gets the entry's own.
  const sender = { ...envelope, newId: () => entry.id };
  return completeCommand(commandAsToday(entry.command), sender, {
    chain: chain?.chain ?? emptyChain,
    chainVersion: chain?.version ?? 0,
    findings: audit?.findings ?? [],
    firmwareLevels: known.firmwareLevels ?? [],
    figures: known.organisation === null ? null : figuresIn(known.organisation),
    ownChanges: known.organisation?.settings.ownChanges ?? [],
  });
}

/** Evidence as triage will know it; until it has arrived, under the id of its entry. */
function evidenceOf(entry: ReadingEntry | UploadEntry, by: string): EvidenceRef {
  const tie = entry.kind === 'reading' ? entry.reading.tie : entry.about.tie;
  return {
    id: entry.id,
    kind: entry.kind === 'reading' ? entry.reading.reading.kind : entry.about.kind,
    sha256: null,
    tie: {
      deviceId: null,
      portId: null,
      linkId: null,
      watchId: null,
      changeId: null,
      shows: null,
      ...tie,
    },
    span: entry.kind === 'upload' ? entry.about.span : null,
    reading: entry.kind === 'reading' ? entry.reading.reading : null,
    at: entry.madeAt,
    by,
    withdrawn: null,
  };
}
