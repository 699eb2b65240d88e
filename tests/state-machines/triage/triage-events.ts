import type { z } from 'zod';
import type { Chain, Finding, Place } from '../../../shared/contract/chain.ts';
import {
  type TicketCommand,
  type TicketCommandType,
  ticketCommand,
} from '../../../shared/contract/commands.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import { completenessItems, type TriageSettings, type Waiver } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/index.ts';
import {
  type CompleteCommand,
  commandRoles,
  completeCommand,
  type Opening,
} from '../../../state-machines/index.ts';
import { untoldPattern } from '../../support/untold-pattern.ts';

/** A ticket command as a client sends it: what has a default may be left out. */
export type Sent = z.input<typeof ticketCommand>;
/** What a use case adds, where a test wants something else than usual. */
export type Added = {
  ownChanges?: readonly OwnChange[];
  role?: MemberRole;
  firmwareBelowLevel?: string[];
  chain?: Chain;
  figures?: TriageSettings;
};

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
  settings: { revision: 1, risk: 0.05, reopenDays: 30 },
  symptom: { kind: 'dropOuts', perHour: 6, lastsS: 3, ...untoldPattern },
  whatChanged: [],
  at: '2026-11-02T08:00:00.000Z',
  by: members.dispatcher,
};

const roleFor = (type: TicketCommandType): MemberRole =>
  commandRoles[type].includes('technician') ? 'technician' : 'support';

/** Makes a command complete: default values, ids, and what the server would know of the chain. */
export function completeOf(
  sent: Sent,
  stamp: { at: string; newId: () => string; chain: Chain } & Added,
): CompleteCommand {
  const parsed: TicketCommand = ticketCommand.parse(sent);
  const role = stamp.role ?? roleFor(parsed.type);
  const sender = { at: stamp.at, by: members[role], role, newId: stamp.newId };
  const { chain, firmwareBelowLevel = [], figures = null, ownChanges = [] } = stamp;
  const command = completeCommand(parsed, sender, {
    chain,
    chainVersion: 1,
    findings: [finding],
    firmwareLevels: [],
    ownChanges,
    figures,
  });
  if (command.type !== 'reviewAudit') return command;
  return { ...command, known: { audit: { ...command.known.audit, firmwareBelowLevel } } };
}

/** What the audit of the tests' chain finds. */
const finding: Finding = {
  rule: 'length-long',
  severity: 'shouldFix',
  place: link('L3'),
  placeName: message('asWritten', { sentence: 'The cable' }),
  text: message('asWritten', { sentence: 'It is long.' }),
  whatToDo: message('fitAnotherCable'),
  source: message('computedCapacity'),
  cautions: [],
};

/** A waiver for each of these items. */
export const waivers = (...items: Waiver['item'][]): Waiver[] =>
  items.map((item) => ({ item, reason: 'Cannot be had at this site' }));

/** Waives all that can be missing. */
export const waiveAll = waivers(...completenessItems);

/** What forbids leaving a change in between visits, none of it so. */
export const leftSafely = {
  liesAcrossFloor: false,
  hangs: false,
  staysOpen: false,
  lacksCooling: false,
  defeatsProtection: false,
};
