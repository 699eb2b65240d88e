import { isBelowLevel } from '../../shared/chain/firmware-level.ts';
import { withInstalled } from '../../shared/chain/installed.ts';
import type { Chain, Finding } from '../../shared/contract/chain.ts';
import type { TicketCommand } from '../../shared/contract/commands.ts';
import type { OrganisationSettings } from '../../shared/contract/organisation.ts';
import type { OwnChange } from '../../shared/contract/own-change.ts';
import type { TriageSettings } from '../../shared/contract/triage.ts';
import { withIds } from './command-ids.ts';
import type { AuditKnown, CompleteCommand, Stamp } from './events.ts';

/** Who sends it, when it was taken (UTC, ISO 8601), and where an id comes from that the sender left out. */
export type Sender = Stamp & { newId: () => string };

/** What whoever completes a command (the server, or a phone ahead of it) knows; `needsOf` says what of it is asked for. */
export type KnownFacts = {
  /** The version of the chain that the command names; with parts that were put in, the newest, which they go into. */
  chain: Chain;
  /** The number of that version. */
  chainVersion: number;
  /** What the prerequisite audit finds in that chain now, for this ticket's symptom. */
  findings: readonly Finding[];
  firmwareLevels: readonly { model: string; minimum: string }[];
  /** Null where they are not known; the ticket's own count then. */
  figures: TriageSettings | null;
  /** The organisation's own kinds of change. */
  ownChanges: readonly OwnChange[];
};
export type Needs = {
  /** The version of the chain that has to be known, and to exist. */
  chainVersion: number | null;
  audit: boolean;
  figures: boolean;
  ownChanges: boolean;
};

/** The figures of an organisation's document that its tickets are worked by. */
export const figuresIn = (document: {
  version: number;
  settings: Pick<OrganisationSettings, 'risk' | 'reopenDays'>;
}): TriageSettings => ({
  revision: document.version,
  risk: document.settings.risk,
  reopenDays: document.settings.reopenDays,
});

/** Commands whose outcome, or refusal, hangs on the organisation's figures. */
const byFigures: ReadonlySet<TicketCommand['type']> = new Set([
  'startWatch',
  'judgeRetest',
  'chooseRemedy',
  'close',
  'reopen',
  // What rests on what was seen is decided again by them.
  'amendIntake',
  'confirmOccurrence',
  'withdrawOccurrence',
  'correctOccurrence',
  'voidWatch',
]);

type FinishesRemedy = Extract<TicketCommand, { type: 'finishRemedy' }>;
/** Whether a repair put other parts in. What a phone of before kept of it says nothing of parts. */
export const putsPartsIn = (command: TicketCommand): command is FinishesRemedy =>
  command.type === 'finishRemedy' && ((command as Partial<FinishesRemedy>).installed ?? []).length > 0;

/** What has to be found out before a command can be completed. */
export function needsOf(command: TicketCommand): Needs {
  const named = 'chainVersion' in command ? command.chainVersion : null;
  return {
    chainVersion: command.type === 'finishRemedy' ? command.asLeftChainVersion : named,
    audit: command.type === 'reviewAudit',
    figures: byFigures.has(command.type),
    ownChanges: 'ownKindId' in command && command.ownKindId != null,
  };
}

/**
 * Makes a command complete, on the server and on the phone alike: who and when, ids, and what its outcome hangs on.
 * The one place that knows what a command needs; the machine itself reads neither clock nor database.
 */
export function completeCommand(sent: TicketCommand, sender: Sender, known: KnownFacts): CompleteCommand {
  const { newId, ...stamp } = sender;
  const { figures } = known;
  const command = withIds(sent, newId);
  if (command.type === 'reviewAudit') return { ...command, ...stamp, known: { audit: auditOf(known) } };
  if (command.type === 'recordAsFound') return { ...command, ...stamp, chain: known.chain };
  if (putsPartsIn(command)) {
    const chain = withInstalled(known.chain, command.installed);
    return { ...command, ...stamp, chain, asLeftChainVersion: known.chainVersion + 1 };
  }
  if (command.type === 'declareChange' || command.type === 'enterLateChange') {
    const own = known.ownChanges.find(({ id }) => id === command.ownKindId) ?? null;
    return { ...command, ...stamp, known: { own } };
  }
  return {
    ...command,
    ...stamp,
    ...(needsOf(sent).figures && figures !== null ? { known: { figures } } : {}),
  };
}

const auditOf = ({ chain, findings, firmwareLevels }: KnownFacts): AuditKnown => ({
  findings: findings.map(({ rule, severity, place }) => ({ code: rule, severity, place })),
  firmwareBelowLevel: chain.devices
    .filter((device) => isBelowLevel(device, firmwareLevels))
    .map(({ id }) => id),
});
