import type { z } from 'zod';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import {
  type TicketCommand,
  type TicketCommandType,
  ticketCommand,
} from '../../../shared/contract/commands.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import { completenessItems, type Waiver } from '../../../shared/contract/triage.ts';
import { commandRoles, type Opening, type TriageEvent } from '../../../state-machines/index.ts';

/** A ticket command as a client sends it: what has a default may be left out. */
export type Sent = z.input<typeof ticketCommand>;
/** What a use case adds, where a test wants something else than usual. */
export type Added = { role?: MemberRole; firmwareBelowLevel?: string[]; chain?: Chain };

export const uuid = (number: number): string =>
  `00000000-0000-4000-8000-${number.toString(16).padStart(12, '0')}`;
export const members: Record<MemberRole, string> = {
  dispatcher: uuid(1),
  technician: uuid(2),
  support: uuid(3),
  admin: uuid(4),
};
export const link = (linkId: string): Place => ({ kind: 'link', linkId });
export const device = (deviceId: string): Place => ({ kind: 'device', deviceId });
export const port = (deviceId: string, portId: string): Place => ({ kind: 'port', deviceId, portId });

export const opening: Opening = {
  ticketId: uuid(9),
  settings: { risk: 0.05, reopenDays: 30 },
  symptom: { kind: 'dropOuts', perHour: 6, lastsS: 3 },
  whatChanged: [],
  at: '2026-11-02T08:00:00.000Z',
  by: members.dispatcher,
};

const roleFor = (type: TicketCommandType): MemberRole =>
  commandRoles[type].includes('technician') ? 'technician' : 'support';

/** Makes the event of a command: default values, ids, and what the server would know of the chain. */
export function eventOf(
  sent: Sent,
  stamp: { at: string; newId: () => string; chain: Chain } & Added,
): TriageEvent {
  const command: TicketCommand = ticketCommand.parse(sent);
  const role = stamp.role ?? roleFor(command.type);
  const signed = { at: stamp.at, by: members[role], role };
  switch (command.type) {
    case 'reviewAudit': {
      const { firmwareBelowLevel = [] } = stamp;
      return { ...command, ...signed, mustFix: 0, shouldFix: 1, firmwareBelowLevel };
    }
    case 'recordAsFound':
      return { ...command, ...signed, chain: stamp.chain };
    case 'startWatch':
      return { ...command, ...signed, watchId: command.watchId ?? stamp.newId() };
    case 'recordOccurrence':
    case 'confirmOccurrence':
      return { ...command, ...signed, occurrenceId: command.occurrenceId ?? stamp.newId() };
    case 'declareChange':
      return { ...command, ...signed, changeId: command.changeId ?? stamp.newId() };
    case 'directStep':
      return { ...command, ...signed, requestId: command.requestId ?? stamp.newId() };
    case 'askForMore': {
      const requests = command.requests.map((one) => ({ ...one, requestId: one.requestId ?? stamp.newId() }));
      return { ...command, ...signed, requests };
    }
    default:
      return { ...command, ...signed };
  }
}

/** A waiver for each of these items. */
export const waivers = (...items: Waiver['item'][]): Waiver[] =>
  items.map((item) => ({ item, reason: 'Cannot be had at this site' }));

/** Waives all that can be missing. */
export const waiveAll = waivers(...completenessItems);
