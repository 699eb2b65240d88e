import type { z } from 'zod';
import type { intake, Ticket } from '../shared/contract/ticket.ts';
import { hasHandle } from '../src/features/organisation/index.ts';
import { provisionOrganisation } from '../src/features/people/index.ts';
import type { Services } from '../src/services.ts';
import { firm, firmwareLevels, makersDesk } from './firm.ts';
import { expectStatus, type Session, signIn, type Transport } from './session.ts';
import { demoSites } from './sites.ts';
import { laterToday, type StoryClock } from './story-clock.ts';

type SiteKey = (typeof demoSites)[number]['key'];
export type Planted = Record<SiteKey, { siteId: string; chainId: string }>;

/** Whether the demo's firm is in this database already. */
export const isPlanted = ({ database }: Services): Promise<boolean> => hasHandle(database, firm.handle);

export async function plantOrganisations(services: Services): Promise<void> {
  await provisionOrganisation(services, firm);
  await provisionOrganisation(services, makersDesk);
}

/** Sites, chains and firmware levels of the demo, through the API. */
export async function plantSites(transport: Transport): Promise<Planted> {
  const dispatcher = await signIn(transport, firm.handle, 'oda@lanternrow.example');
  const admin = await signIn(transport, firm.handle, 'runa@lanternrow.example');
  for (const level of firmwareLevels) expectStatus(await admin.post('/firmware-levels', level), 201);
  const planted: Partial<Planted> = {};
  for (const { key, site, chain } of demoSites) {
    const { id: siteId } = expectStatus(await dispatcher.post<{ id: string }>('/sites', site), 201);
    const { id: chainId } = expectStatus(
      await dispatcher.post<{ id: string }>(`/sites/${siteId}/chains`, chain),
      201,
    );
    planted[key] = { siteId, chainId };
  }
  return planted as Planted;
}

type Intake = z.input<typeof intake>;

async function open(
  dispatcher: Session,
  where: { siteId: string; chainId: string },
  facts: Intake,
  more: object,
): Promise<Ticket> {
  return expectStatus(await dispatcher.post<Ticket>('/tickets', { ...where, intake: facts, ...more }), 201);
}

/** Tickets in different states: one at the very start of triage, one being watched, one closed. */
export async function plantTickets(transport: Transport, planted: Planted, clock: StoryClock): Promise<void> {
  const dispatcher = await signIn(transport, firm.handle, 'oda@lanternrow.example');
  const brask = await signIn(transport, firm.handle, 'brask@lanternrow.example');
  const tuli = await signIn(transport, firm.handle, 'tuli@lanternrow.example');
  const idOf = async (session: Session) =>
    expectStatus(await session.get<{ memberAddress: string }>('/me'), 200).memberAddress;
  const visitAt = laterToday();

  // Called in yesterday, for a visit today.
  clock.to(hoursAgo(20));
  await open(
    dispatcher,
    planted.gable,
    {
      reporter: { name: 'Edda Corrowin', phone: '+353 1 555 0142', relation: 'owner' },
      symptom: { kind: 'dropOuts', perHour: 3, lastsS: 4, pattern: { kind: 'random' } },
      affectedSources: ['disc', 'stream'],
      affectedContent: 'Films in 2160p, evenings; never in the menus.',
      since: 'about three weeks',
      workedBefore: true,
      triedOnPhone: 'Receiver switched off and on: came back after twenty minutes.',
      promised: 'Somebody comes today, and calls half an hour before.',
    },
    { priority: 'high', assigneeId: await idOf(brask), visitAt, visitMin: 120 },
  );
  clock.backToReal();

  const watching = await open(
    dispatcher,
    planted.boat,
    {
      reporter: { name: 'Maro Penhollow', phone: '+353 1 555 0123', relation: 'manager' },
      symptom: { kind: 'noHdr', pattern: { kind: 'trigger', trigger: 'titleStart' } },
      affectedSources: ['disc'],
      since: 'since the receiver was updated',
      workedBefore: true,
      whatChanged: [{ kind: 'firmware', text: 'Receiver updated by the owner', when: 'last week' }],
    },
    { assigneeId: await idOf(tuli), visitAt },
  );
  await tuli.command(watching.id, { type: 'reviewAudit', chainVersion: 1 });
  await tuli.command(watching.id, { type: 'recordAsFound', chainVersion: 1 });
  await tuli.command(watching.id, { type: 'startWatch', plannedMin: 60 });

  clock.to(hoursAgo(9));
  const quiet = await open(
    dispatcher,
    planted.study,
    {
      reporter: { name: 'Lisk Amberwell', phone: '+353 1 555 0177', relation: 'owner' },
      symptom: { kind: 'noPicture', perHour: 1, pattern: { kind: 'random', rarely: false } },
      since: 'once, last Sunday',
      whatChanged: [{ kind: 'nothing', text: '', when: null }],
    },
    { priority: 'low', assigneeId: await idOf(tuli) },
  );
  await closeAsNoFaultFound(tuli, quiet.id, clock);
  clock.backToReal();
}

const hoursAgo = (hours: number): Date => new Date(Date.now() - hours * 3_600_000);

/** A fault told once that a long enough quiet watch did not show again. */
async function closeAsNoFaultFound(technician: Session, ticketId: string, clock: StoryClock): Promise<void> {
  clock.to(hoursAgo(8));
  await technician.command(ticketId, { type: 'reviewAudit', chainVersion: 1 });
  await technician.command(ticketId, { type: 'recordAsFound', chainVersion: 1 });
  await technician.command(ticketId, { type: 'startWatch' });
  clock.to(hoursAgo(0.5));
  await technician.command(ticketId, { type: 'endWatch' });
  await technician.command(ticketId, {
    type: 'chooseRemedy',
    remedy: {
      kind: 'noFaultFound',
      what: 'Watched for seven and a half hours with the usual sources: nothing.',
    },
  });
  await technician.command(ticketId, { type: 'finishRemedy', asLeftChainVersion: 1 });
  await technician.command(ticketId, { type: 'close', note: 'To be told again if it comes back.' });
}
