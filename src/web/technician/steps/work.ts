import { useState } from 'preact/hooks';
import type { Chain } from '../../../../shared/contract/chain.ts';
import type { TicketCommand, TicketCommandType } from '../../../../shared/contract/commands.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { watchAsItComes } from '../../../../state-machines/triage/plan/steps.ts';
import { type Known, ticketAfter, withShown, wouldRefuse } from '../../projection/project.ts';
import { useTicket } from '../../projection/use-ticket.ts';
import type { DocumentState } from '../../store/documents.ts';
import { putCommand } from '../../store/outbox.ts';
import { useZone } from '../../words/zone.ts';

/** A ticket in the technician's hands: how it stands with all that was done here, and the way to do the next thing. */
export type Work = {
  readonly ticket: Ticket;
  readonly known: Known;
  /** As found; before that is recorded, as it was described last. */
  readonly chain: Chain;
  /** The newest version that the chain is described in. */
  readonly chainVersion: number;
  readonly zone: string;
  /** Whether such a command can be accepted now, as far as that does not hang on what it says. */
  may(type: TicketCommandType): boolean;
  /** Why a command would be refused; null where it would be accepted. */
  refusalOf(command: TicketCommand): Problem | null;
  /** The ticket as a step would leave it; null where it would be refused. */
  after(command: TicketCommand): Ticket | null;
  /** Whether steps would be accepted one after the other. */
  takes(commands: readonly TicketCommand[]): boolean;
  /** Does a step, or says why not. Resolves to whether it was done, once it is safe on this device. */
  send(command: TicketCommand): Promise<boolean>;
  /** Does steps one after the other, each where those before it lead, until one is refused. */
  sendInOrder(commands: readonly TicketCommand[]): Promise<boolean>;
  /** Why the last step was refused. */
  readonly refusal: Problem | null;
  /** A step done here that the ticket, as the server has it, does not take any more. */
  readonly stopped: boolean;
  /** Whether evidence has its entry's id still, since the server has not given it one. */
  isOnItsWay(evidenceId: string): boolean;
};

/** By the contract's schema, which is loaded beside; a device that has yet to fetch it leaves that to the server. */
const misfitOf = (command: TicketCommand): Promise<Problem | null> =>
  import('../../projection/check-command.ts').then(
    ({ misfit }) => misfit(command),
    () => null,
  );

export type WorkOnScreen = { server: DocumentState<Ticket>; work: Work | null };

export function useWork(ticketId: string): WorkOnScreen {
  const { server, projection, known, waiting } = useTicket(ticketId);
  const [refused, setRefused] = useState<{ problem: Problem; of: unknown } | null>(null);
  const zone = useZone(server.body?.siteId ?? null);
  const chainDocument = known?.chain ?? null;
  if (projection === null || known === null || server.body === null || chainDocument === null)
    return { server, work: null };
  const { ticket } = projection;
  const basedOn = server.body;
  const refusalOf = (command: TicketCommand) => wouldRefuse(ticket, command, known, new Date().toISOString());
  const stepFrom = (from: Ticket, command: TicketCommand): Ticket | null => {
    const now = new Date().toISOString();
    const sending = withShown(from, command, known, now);
    return 'problem' in sending ? null : ticketAfter(from, sending.command, known, now);
  };
  const refuse = (problem: Problem) => setRefused({ problem, of: ticket.state });
  const sendOn = async (from: Ticket, command: TicketCommand): Promise<Ticket | null> => {
    const now = new Date().toISOString();
    const sending = withShown(from, command, known, now);
    if ('problem' in sending) {
      refuse(sending.problem);
      return null;
    }
    const misfit = await misfitOf(command);
    if (misfit !== null) {
      refuse(misfit);
      return null;
    }
    setRefused(null);
    await putCommand(basedOn, sending.command);
    return ticketAfter(from, sending.command, known, now);
  };
  return {
    server,
    work: {
      ticket,
      known,
      chain: ticket.triage.asFound?.chain ?? chainDocument.chain,
      chainVersion: chainDocument.version,
      zone,
      may: (type) => ticket.allowedNow.some((command) => command.type === type),
      refusalOf,
      after: (command) => stepFrom(ticket, command),
      takes: (commands) =>
        commands.reduce<Ticket | null>((at, command) => at && stepFrom(at, command), ticket) !== null,
      send: async (command) => (await sendOn(ticket, command)) !== null,
      sendInOrder: async (commands) => {
        let at: Ticket | null = ticket;
        for (const command of commands) at = at && (await sendOn(at, command));
        return at !== null;
      },
      refusal: refused?.of === ticket.state ? refused.problem : null,
      isOnItsWay: (evidenceId) => waiting.some(({ id }) => id === evidenceId),
      stopped:
        projection.refused !== null ||
        waiting.some(({ state }) => state === 'refused' || state === 'conflict'),
    },
  };
}

/** A watch that begins now, in the way in which the fault comes. @param watchMin as long as it is planned for; null: not said */
export const watchFromNow = (
  { ticket }: Pick<Work, 'ticket'>,
  watchMin: number | null,
  menuDeviceId: string | null = null,
) => watchAsItComes({ record: ticket.triage, now: new Date().toISOString() }, watchMin, menuDeviceId);
