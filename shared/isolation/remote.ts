import type { Message } from '../contract/message.ts';
import { decisionOf } from './build-decision.ts';
import { type Candidate, candidateOrder, candidatesFor } from './candidates.ts';
import { staysOnceCured } from './change-catalogue.ts';
import { type ClientReach, whyNotByPhone } from './client-reach.ts';
import type { Decision, Option } from './decision.ts';
import { outside } from './failure-modes.ts';
import { scorerOf } from './information.ts';
import { cableFor, type KitItem, kitKey, kitMessage } from './kit.ts';
import { effectsOf } from './likelihood.ts';
import { type PolicyEnd, policyEnds } from './look-ahead.ts';
import { type Plan, type PlanInput, planNext, termsOf } from './plan.ts';
import { rank } from './rank.ts';
import { type Standing, standingOf } from './standing.ts';
import { recordsOf } from './test-record.ts';

export type PackedItem = {
  item: KitItem;
  text: Message;
  /** Chance that it will be wanted, for a test or for the repair, 0..1. */
  probability: number;
};

export type RemotePlan = {
  /** What to have the client do next, over the phone. */
  plan: Plan;
  /** Chance that a visit is needed even if the client did everything that is safe, 0..1. */
  visitChance: number;
  /** What comes first on the visit, and why the client is not asked to do it; null where the client can. */
  visitFirst: { text: Message; why: Message } | null;
  /** What to put in the van, the likeliest first. */
  kit: PackedItem[];
};

/**
 * What a dispatcher can do before anybody drives: the next thing a client can safely do, how likely a visit is, and
 * what to pack for it.
 *
 * @param input as for `planNext`; its circumstances are those of the visit, the client has no kit
 * @param reach what the client can get at
 */
export function planRemotely(input: PlanInput, reach: ClientReach): RemotePlan {
  const { standing = standingOf(input.facts, input.table) } = input;
  const safe = candidatesFor(standing.model, input.changes)
    .filter((candidate) => whyNotByPhone(candidate, reach) === null)
    .map(({ id }) => id);
  const { decision, best } = visitOf(standing, input);
  return {
    plan: planNext({ ...input, standing, byClient: safe }),
    // A sum of shares can end a rounding above the whole.
    visitChance: Math.min(1, visitChanceOf(standing, input, safe)),
    visitFirst: best === null ? null : notAsked(standing, best.candidate, reach),
    kit: vanKit(standing, decision, best),
  };
}

function notAsked(
  { model }: Standing,
  candidate: Candidate,
  reach: ClientReach,
): { text: Message; why: Message } | null {
  const why = whyNotByPhone(candidate, reach);
  return why === null ? null : { text: candidateOrder(model, candidate), why };
}

/** What may stay once it is made cures the fault where it is what is wrong. */
function visitChanceOf({ model, chances }: Standing, { changes }: PlanInput, safe: string[]): number {
  const cures = candidatesFor(model, changes)
    .filter(({ id }) => safe.includes(id))
    .flatMap(({ action }) =>
      action.kind === 'test' && staysOnceCured(action) ? [effectsOf(model, action)] : [],
    );
  const uncured = (at: number) => cures.reduce((left, effects) => left * (1 - (effects.because[at] ?? 0)), 1);
  return chances.reduce((sum, chance, at) => sum + chance * uncured(at), 0);
}

/** Beliefs looked at for the packing list; assumed. */
const packingBeliefs = 120;
/** What is wanted less often than this stays at home; assumed. */
const worthPacking = 0.02;

/** What can be done on the visit, and what is best done first. */
function visitOf(
  { model, chances }: Standing,
  input: PlanInput,
): { decision: Decision; best: Option | null } {
  const candidates = candidatesFor(model, input.changes).filter(({ people }) => people <= input.here.people);
  const decision = decisionOf(
    model,
    chances,
    recordsOf(input.facts, input.facts.results),
    candidates,
    termsOf(input),
  );
  return { decision, best: rank(decision)[0]?.option ?? null };
}

/** Follows the plan of the visit over its outcomes, and adds up in how many of them each thing is wanted. */
function vanKit({ model }: Standing, decision: Decision, best: Option | null): PackedItem[] {
  const ends: Pick<PolicyEnd, 'weight' | 'chances' | 'taken'>[] =
    best === null
      ? [{ weight: 1, chances: decision.chances, taken: null }]
      : policyEnds(decision, scorerOf(decision), decision.options.indexOf(best), packingBeliefs);
  const wanted = new Map<string, PackedItem>();
  const add = (item: KitItem, probability: number) => {
    const key = kitKey(item);
    const before = wanted.get(key)?.probability ?? 0;
    wanted.set(key, { item, text: kitMessage(item), probability: Math.min(1, before + probability) });
  };
  for (const { weight, chances: believed, taken } of ends) {
    const used = new Map<string, KitItem>();
    for (let step = taken; step !== null; step = step.before)
      for (const item of decision.options[step.index]?.candidate.kit ?? []) used.set(kitKey(item), item);
    for (const item of used.values()) add(item, weight);
    for (const [at, chance] of believed.entries()) {
      const link = model.components.known.get(decision.groups[decision.groupOf[at] ?? 0] ?? outside)?.link;
      if (link == null) continue;
      const spare = cableFor(link);
      if (!used.has(kitKey(spare))) add(spare, weight * chance);
    }
  }
  return [...wanted.values()]
    .filter(({ probability }) => probability >= worthPacking)
    .sort((a, b) => b.probability - a.probability);
}
