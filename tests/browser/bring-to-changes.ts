import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, type Session, signIn } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import type { Stage } from './stage.ts';

/** The technician of the demo over HTTP, and the ticket that is theirs. */
export async function technicianOn(stage: Stage): Promise<{ technician: Session; ticketId: string }> {
  const technician = await signIn(overHttp(stage.base), firm.handle, 'brask@lanternrow.example');
  const { items } = expectStatus(await technician.get<{ items: Ticket[] }>('/tickets'), 200);
  const { memberAddress } = expectStatus(await technician.get<{ memberAddress: string }>('/me'), 200);
  return { technician, ticketId: items.find(({ assigneeId }) => assigneeId === memberAddress)?.id ?? '' };
}

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();

export async function recordBaseline(technician: Session, ticketId: string): Promise<void> {
  await technician.command(ticketId, { type: 'reviewAudit', chainVersion: 1 });
  await technician.command(ticketId, { type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] });
  await technician.command(ticketId, { type: 'recordAsFound', chainVersion: 1 });
}

/** Through an hour with three occurrences, and the processor's menu that vanished: it lies behind the processor. */
export async function fromBaselineToChanges(technician: Session, ticketId: string): Promise<void> {
  const at = (type: string, minutes: number, more: object = {}) =>
    technician.command(ticketId, { type, happenedAt: minutesAgo(minutes), ...more });
  await at('startWatch', 600);
  for (const minutes of [590, 570, 550]) await at('recordOccurrence', minutes);
  await at('endWatch', 540);
  await technician.command(ticketId, { type: 'acceptReproduction' });
  await at('startWatch', 500, { menuDeviceId: 'processor' });
  await at('recordOccurrence', 490, { menu: 'vanished' });
  await at('endWatch', 480);
  await technician.command(ticketId, { type: 'concludeSide', deviceId: 'processor' });
  await technician.command(ticketId, { type: 'beginSubstitution' });
}

export async function bringToChanges(technician: Session, ticketId: string): Promise<void> {
  await recordBaseline(technician, ticketId);
  await fromBaselineToChanges(technician, ticketId);
}
