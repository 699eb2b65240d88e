import type { PlanReply } from '../../../shared/contract/plan.ts';
import type { Marks } from './marks.ts';

/** Less likely suspects would only shade everything; assumed. */
const leastChance = 0.05;

/** What a plan says of the places of a chain: the likely suspects with their chances, and what it would do next. */
export function planMarks(plan: PlanReply | null): Marks {
  if (plan === null) return {};
  return {
    suspects: plan.suspects.flatMap(({ place, probability }) =>
      place === null || probability < leastChance ? [] : [{ place, chance: probability }],
    ),
    next: plan.next?.target ?? null,
  };
}
