import type { Decision, Option } from './decision.ts';
import { outside } from './failure-modes.ts';
import type { FaultModel } from './hypotheses.ts';

/** An option with its chance of coming out first under each hypothesis of the model. */
export type OptionByHypothesis = Omit<Option, 'first' | 'after'> & { first: readonly number[] };

/** Chances closer than this count as the same: below what the figures are worth. */
const same = 0.005;
/** Hypotheses and components less likely than this are planned for in one, not one by one; assumed. */
const negligible = 1 / 500;

/** An option that comes out alike for all classes, give or take this, is left out; assumed. */
const tellsNothing = 0.02;

/** Leaves out candidates that tell what another one tells too, for fewer minutes. */
export function withoutDearer(candidates: readonly OptionByHypothesis[][]): OptionByHypothesis[][] {
  const cheapFirst = candidates
    .flatMap((steps) => (steps[0] === undefined ? [] : [{ steps, main: steps[0] }]))
    .toSorted((a, b) => a.main.firstMin + a.main.secondMin - b.main.firstMin - b.main.secondMin);
  const kept: typeof cheapFirst = [];
  for (const each of cheapFirst) {
    const told = kept.some(
      ({ main }) =>
        main.firstMin <= each.main.firstMin &&
        main.secondMin <= each.main.secondMin &&
        main.first.every((chance, at) => Math.abs(chance - (each.main.first[at] ?? 0)) < same),
    );
    if (!told) kept.push(each);
  }
  return kept.map(({ steps }) => steps);
}

type Class = { group: string; members: number[]; chance: number };

/**
 * Brings hypotheses that no option tells apart, and those that hardly matter, into classes. A class answers to an
 * option as its members do on average.
 */
export function inClasses(
  model: FaultModel,
  chances: readonly number[],
  options: readonly (OptionByHypothesis & { after: number })[],
): Pick<Decision, 'chances' | 'groupOf' | 'groups' | 'options'> {
  const classes = classesOf(model, chances, options);
  const groups = [...new Set(classes.map(({ group }) => group))];
  const averaged = (first: readonly number[]) =>
    Float64Array.from(classes, ({ members, chance }) => {
      const joint = members.reduce((sum, at) => sum + (chances[at] ?? 0) * (first[at] ?? 0), 0);
      return chance > 0 ? joint / chance : 0.5;
    });
  const inClass = options.map((option) => ({ ...option, first: averaged(option.first) }));
  const telling = inClass.filter(({ first }) => Math.max(...first) - Math.min(...first) >= tellsNothing);
  return {
    chances: Float64Array.from(classes, ({ chance }) => chance),
    groupOf: Int32Array.from(classes, ({ group }) => groups.indexOf(group)),
    groups,
    options: telling.map((option) => {
      const before = inClass[option.after];
      return before === undefined ? option : { ...option, after: telling.indexOf(before) };
    }),
  };
}

function classesOf(
  model: FaultModel,
  chances: readonly number[],
  options: readonly OptionByHypothesis[],
): Class[] {
  const sums = new Map<string, number>();
  for (const [at, { component }] of model.hypotheses.entries())
    sums.set(component, (sums.get(component) ?? 0) + (chances[at] ?? 0));
  const classes: Class[] = [];
  const alike = (one: number, other: number) =>
    options.every(({ first }) => Math.abs((first[one] ?? 0) - (first[other] ?? 0)) < same);
  for (const [at, { component }] of model.hypotheses.entries()) {
    const chance = chances[at] ?? 0;
    const group = (sums.get(component) ?? 0) < negligible ? outside : component;
    const isSmall = (each: number) => (chances[each] ?? 0) < negligible;
    const found = classes.find(({ group: own, members: [first = at] }) =>
      own === group && isSmall(first) === isSmall(at) ? isSmall(at) || alike(first, at) : false,
    );
    if (found === undefined) classes.push({ group, members: [at], chance });
    else {
      found.members.push(at);
      found.chance += chance;
    }
  }
  return classes;
}
