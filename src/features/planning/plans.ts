import type { PhonePlanReply, PlanQuery, PlanReply } from '../../../shared/contract/plan.ts';
import type { Circumstances } from '../../../shared/isolation/index.ts';
import { planByPhone, planTicket } from '../../../state-machines/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { noTicket } from '../ticket-record/index.ts';
import { requestFor } from './known-case.ts';

/** What to do next on a ticket, with what is at hand on site. */
export async function readPlan(
  context: Context,
  ticketId: string,
  { kit, people, refused: unwanted }: PlanQuery,
): Promise<Outcome<PlanReply>> {
  const here = { kit: kit ?? null, people, refused: unwanted } as Circumstances;
  const asked = await requestFor(context, ticketId, here);
  return asked === null ? noTicket : found(planTicket(asked.snapshot, asked.request));
}

/** What a client can be asked to do on the phone, and what to pack; everything can be packed for the visit. */
export async function readPhonePlan(
  context: Context,
  ticketId: string,
  reachableDevices: readonly string[],
): Promise<Outcome<PhonePlanReply>> {
  const asked = await requestFor(context, ticketId, { kit: null, people: 1, refused: [] });
  return asked === null ? noTicket : found(planByPhone(asked.snapshot, asked.request, { reachableDevices }));
}
