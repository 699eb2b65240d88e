import type { Chain, Place } from '../../../shared/contract/chain.ts';
import { oneOf } from '../../support/house/faults.ts';
import type { Sent as Command } from '../../support/technician.ts';
import { commandOf } from './any-commands.ts';
import { members, uuid, waiveAll } from './triage-events.ts';
import type { WalkedTicket } from './walked-ticket.ts';

/** What others do meanwhile, or the technician thinks better of: never offered, and taken where it is allowed. */
const interrupting = [
  'voidWatch',
  'withdrawOccurrence',
  'correctOccurrence',
  'withdrawSide',
  'withdrawChange',
  'withdrawCulprit',
  'withdrawRemedy',
  'locateSideAgain',
  'amendIntake',
  'answerWhatChanged',
  'note',
] as const;
const technicians = [members.technician, members.admin, uuid(0x77)];

/** Something that nobody planned for; says what it was. */
export function interrupt(ticket: WalkedTicket, random: () => number): string {
  const which = Math.floor(random() * (interrupting.length + 3));
  switch (which) {
    case 0:
      return told(ticket, { type: 'escalate', question: 'What is it?', waivers: waiveAll });
    case 1:
      ticket.technician = oneOf(technicians, random);
      return 'another technician';
    case 2:
      return occurrenceByLog(ticket, random);
    default: {
      const type = interrupting[which - 3] ?? 'note';
      const picks = { what: 0, which: Math.floor(random() * 1000), minutes: 0, offline: false };
      return told(ticket, commandOf([type], picks, ticket.snapshot) as Command);
    }
  }
}

function told(ticket: WalkedTicket, command: Command): string {
  const refused = ticket.send(command);
  return refused === null ? command.type : `${command.type}, refused: ${refused}`;
}

/** A log shows an occurrence that nobody saw, in a watch that has ended. */
function occurrenceByLog(ticket: WalkedTicket, random: () => number): string {
  const ended = ticket.record.watches.filter(({ endedAt }) => endedAt !== null);
  if (ended.length === 0) return 'no watch for a log';
  const { id, startedAt, endedAt, purpose } = oneOf(ended, random);
  const [from, to] = [Date.parse(startedAt), Date.parse(endedAt ?? startedAt)];
  return told(ticket, {
    type: 'confirmOccurrence',
    watchId: id,
    occurredAt: new Date(from + Math.floor((to - from) * random())).toISOString(),
    menu: purpose === 'side' ? oneOf(['stayed', 'vanished'], random) : null,
    evidenceId: ticket.addLog(),
  });
}

/** What second line may do with a case that it has taken. */
export function answerOfSecondLine(chain: Chain, random: () => number): Command {
  const place: Place = { kind: 'link', linkId: oneOf(chain.links, random).id };
  const change = { kind: oneOf(['reseat', 'replaceCable'], random), target: place };
  const answers: Command[] = [
    { type: 'directStep', text: 'Read the EDID' },
    { type: 'directStep', text: 'Do this', change },
    { type: 'handBack', reason: 'Watch for longer first' },
    { type: 'askForMore', requests: [{ text: 'The EDID' }, { text: 'A photo' }] },
    { type: 'acceptCase', finding: 'A known fault', place: random() < 0.5 ? place : null },
  ];
  return oneOf(answers, random);
}
