import type { Context } from '../../http/index.ts';
import { caseToPlan } from './case-to-plan.ts';
import { type Suspects, suspectsWork } from './plan.work.ts';

/** What can be at fault on a ticket, the likeliest first, and what earlier rounds count for in that; empty without a ticket. */
export async function suspectsOn(context: Context, ticketId: string): Promise<Suspects> {
  const ticket = await caseToPlan(context, ticketId);
  if (ticket === null) return { suspects: [], earlierRoundsCount: null };
  return context.services.heavyWork.compute(suspectsWork, ticket, context.actor);
}
