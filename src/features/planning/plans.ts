import type { LanguageTag } from '../../../shared/contract/language-names.ts';
import type { Asked, HeavyWork, ReplyTask } from '../../heavy-work/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import type { SpokenReply } from '../../replies/spoken.ts';
import { noTicket } from '../ticket-record/index.ts';
import { caseToPlan } from './case-to-plan.ts';
import type { CaseToPlan, Question } from './plan.work.ts';
import { PlanCache } from './plan-cache.ts';
import { standingOfTicket } from './standing-of-ticket.read.ts';

/** Assumed: how long a plan may be shown on while only time goes by, which it reckons in minutes. */
const goodForMs = 60_000;

/** A plan that is kept, or what one is made from and kept under. */
type Found<Asking> =
  | { readonly kept: SpokenReply }
  | { readonly key: string; readonly ticket: CaseToPlan; readonly asking: Asking };

/** Plans, made by worker threads and kept for as long as nothing changes but the time. */
export class Plans<Asking, Plan> {
  readonly #cache = new PlanCache();
  readonly #heavyWork: HeavyWork;
  readonly #planning: ReplyTask<Question<Asking>, Plan>;

  constructor(heavyWork: HeavyWork, planning: ReplyTask<Question<Asking>, Plan>) {
    this.#heavyWork = heavyWork;
    this.#planning = planning;
  }

  /** What there is to go by, in the caller's transaction. */
  async find(context: Context, ticketId: string, asking: Asking): Promise<Outcome<Found<Asking>>> {
    const standing = await standingOfTicket(context, ticketId);
    if (standing === null) return noTicket;
    const { actor, language, services } = context;
    const minute = Math.floor(services.now().getTime() / goodForMs);
    const key = JSON.stringify([actor.orgId, ticketId, language, standing, minute, asking]);
    const kept = this.#cache.get(key);
    if (kept !== undefined) return found({ kept });
    const ticket = await caseToPlan(context, ticketId);
    return ticket === null ? noTicket : found({ key, ticket, asking });
  }

  /** The plan, after the transaction. */
  async make(from: Found<Asking>, asked: Asked, language: LanguageTag): Promise<SpokenReply> {
    if ('kept' in from) return from.kept;
    const { key, ...input } = from;
    return this.#cache.make(key, () => this.#heavyWork.compute(this.#planning, { input, language }, asked));
  }
}
