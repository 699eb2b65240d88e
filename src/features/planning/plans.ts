import type { Asked, HeavyTask, HeavyWork } from '../../heavy-work/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { noTicket } from '../ticket-record/index.ts';
import { caseToPlan } from './case-to-plan.ts';
import type { CaseToPlan, Question } from './plan.work.ts';
import { PlanCache } from './plan-cache.ts';
import { standingOfTicket } from './standing-of-ticket.read.ts';

/** Assumed: how long a plan may be shown on while only time goes by, which it reckons in minutes. */
const goodForMs = 60_000;

/** What a worker thread can be asked of a ticket. */
type Planning<Asking, Plan> = HeavyTask<Question<Asking>, Plan>;

/** A plan that is kept, or what one is made from and kept under. */
type Found<Asking, Plan> =
  | { readonly kept: Plan }
  | { readonly key: string; readonly ticket: CaseToPlan; readonly asking: Asking };

/** Plans, made by worker threads and kept for as long as nothing changes but the time. */
export class Plans<Asking, Plan extends object> {
  readonly #cache = new PlanCache<Plan>();
  readonly #heavyWork: HeavyWork;
  readonly #planning: Planning<Asking, Plan>;

  constructor(heavyWork: HeavyWork, planning: Planning<Asking, Plan>) {
    this.#heavyWork = heavyWork;
    this.#planning = planning;
  }

  /** What there is to go by, in the caller's transaction. */
  async find(context: Context, ticketId: string, asking: Asking): Promise<Outcome<Found<Asking, Plan>>> {
    const standing = await standingOfTicket(context, ticketId);
    if (standing === null) return noTicket;
    const minute = Math.floor(context.services.now().getTime() / goodForMs);
    const key = JSON.stringify([context.actor.orgId, ticketId, standing, minute, asking]);
    const kept = this.#cache.get(key);
    if (kept !== undefined) return found({ kept });
    const ticket = await caseToPlan(context, ticketId);
    return ticket === null ? noTicket : found({ key, ticket, asking });
  }

  /** The plan, after the transaction. */
  async make(from: Found<Asking, Plan>, asked: Asked): Promise<Plan> {
    if ('kept' in from) return from.kept;
    const { key, ticket, asking } = from;
    return this.#cache.make(key, () => this.#heavyWork.compute(this.#planning, { ticket, asking }, asked));
  }
}
