import type { Decision, Option } from './decision.ts';
import { outside } from './failure-modes.ts';
import type { FaultModel } from './hypotheses.ts';
import { workLimits } from './work.ts';

/** An option with its chance of coming out first under each hypothesis of the model. */
export type OptionByHypothesis = Omit<Option, 'after' | 'resumeMin'>;

/** Chances closer than this count as the same: below what the figures are worth. */
const same = 0.005;
/** Hypotheses and components less likely than this are planned for in one, not one by one; assumed. */
const negligible = 1 / 500;

/** The chance of the first outcome must differ between hypotheses by this much, as a standard deviation; assumed. */
const leastSpread = 0.02;

/** Whether an option comes out differently for what can still be wrong. */
export function tellsApart({ first }: OptionByHypothesis, chances: readonly number[]): boolean {
  return spreadOf(first, chances).variance >= leastSpread ** 2;
}

/**
 * Leaves out candidates that tell no more than another one does, for fewer minutes: whose outcomes are those of the
 * other, blurred. (What a blurred test tells is never worth more: Blackwell 1953, Annals of Mathematical Statistics 24:265.)
 */
export function withoutDearer(
  candidates: readonly OptionByHypothesis[][],
  chances: readonly number[],
  wanted: readonly string[],
): OptionByHypothesis[][] {
  const options = candidates.flatMap((steps) =>
    steps[0] === undefined ? [] : [{ steps, main: steps[0], spread: spreadOf(steps[0].first, chances) }],
  );
  const cheapFirst = mostTelling(options, wanted).toSorted((a, b) => minutesOf(a) - minutesOf(b));
  const kept: typeof options = [];
  for (const each of cheapFirst) {
    const told = kept.some(
      (other) =>
        other.main.firstMin <= each.main.firstMin &&
        other.main.secondMin <= each.main.secondMin &&
        isBlurred(each, other, chances),
    );
    if (!told) kept.push(each);
  }
  return kept.map(({ steps }) => steps);
}

/** What comes next and what may follow it is looked for among so many; assumed, see `npm run bench -- isolation`. */
const mostOptions = 48;

function mostTelling<Each extends Told>(
  options: readonly Each[],
  wanted: readonly string[],
): readonly Each[] {
  if (options.length <= mostOptions) return options;
  const worth = ({ main, spread }: Told) => spread.variance / minutesOf({ main });
  const isWanted = (each: Told) => wanted.includes(each.main.candidate.id);
  const most = Math.max(mostOptions, mostCompared(options[0]?.main.first.length ?? 1));
  const asked = options.filter(isWanted);
  if (asked.length > most) return asked.toSorted((a, b) => worth(b) - worth(a)).slice(0, most);
  const rank = (each: Told) => (isWanted(each) ? Number.POSITIVE_INFINITY : worth(each));
  return options
    .toSorted((a, b) => rank(b) - rank(a) || 0)
    .slice(0, Math.max(mostOptions, Math.min(wanted.length, most)));
}

/** So many options can be compared, each with each, within what comparing may take. */
const mostCompared = (hypotheses: number): number =>
  Math.floor(Math.sqrt((2 * workLimits.comparing) / hypotheses));

const minutesOf = ({ main }: Pick<Told, 'main'>): number => main.firstMin + main.secondMin;

type Spread = { mean: number; variance: number };

function spreadOf(first: Float64Array, chances: readonly number[]): Spread {
  let mean = 0;
  let square = 0;
  for (let at = 0; at < first.length; at += 1) {
    const [chance, out] = [chances[at] as number, first[at] as number];
    mean += chance * out;
    square += chance * out * out;
  }
  return { mean, variance: square - mean * mean };
}

type Told = { main: OptionByHypothesis; spread: Spread };

/** Whether what one tells is what the other tells, with a slope from 0 to 1, but for less than a test has to tell. */
function isBlurred(one: Told, other: Told, chances: readonly number[]): boolean {
  let joint = 0;
  const [a, b] = [one.main.first, other.main.first];
  for (let at = 0; at < a.length; at += 1)
    joint += (chances[at] as number) * (a[at] as number) * (b[at] as number);
  const covariance = joint - one.spread.mean * other.spread.mean;
  const slope = covariance / other.spread.variance;
  return slope >= 0 && slope <= 1 && one.spread.variance - slope * covariance < leastSpread ** 2;
}

type Class = { group: string; members: number[]; chance: number };

/**
 * Brings hypotheses that no option tells apart, and those that hardly matter, into classes. A class answers to an
 * option as its members do on average.
 */
export function inClasses(
  model: FaultModel,
  chances: readonly number[],
  options: readonly Option[],
): Pick<Decision, 'chances' | 'groupOf' | 'groups' | 'options'> {
  const classes = classesOf(model, chances, options);
  const groups = [...new Set(classes.map(({ group }) => group))];
  const averaged = (first: Float64Array) => {
    const mean = new Float64Array(classes.length);
    for (const [number, { members, chance }] of classes.entries()) {
      let joint = 0;
      for (const at of members) joint += (chances[at] ?? 0) * (first[at] ?? 0);
      mean[number] = chance > 0 ? joint / chance : 0.5;
    }
    return mean;
  };
  return {
    chances: Float64Array.from(classes, ({ chance }) => chance),
    groupOf: Int32Array.from(classes, ({ group }) => groups.indexOf(group)),
    groups,
    options: options.map((option) => ({ ...option, first: averaged(option.first) })),
  };
}

function classesOf(
  model: FaultModel,
  chances: readonly number[],
  options: readonly Pick<Option, 'first' | 'after'>[],
): Class[] {
  const sums = new Map<string, number>();
  for (const [at, { component }] of model.hypotheses.entries())
    sums.set(component, (sums.get(component) ?? 0) + (chances[at] ?? 0));
  // watching on after a quiet watch tells the same hypotheses apart as that watch does
  const telling = options.flatMap(({ first, after }) => (after === -1 ? [first] : []));
  const isSmall = (at: number) => (chances[at] ?? 0) < negligible;
  const alike = (one: number, other: number) => {
    for (const first of telling)
      if (Math.abs((first[one] as number) - (first[other] as number)) >= same) return false;
    return true;
  };
  const byGroup = new Map<string, Class[]>();
  for (const [at, { component }] of model.hypotheses.entries()) {
    const chance = chances[at] ?? 0;
    const group = (sums.get(component) ?? 0) < negligible ? outside : component;
    const classes = byGroup.get(group) ?? [];
    byGroup.set(group, classes);
    const found = classes.find(({ members: [first = at] }) =>
      isSmall(first) === isSmall(at) ? isSmall(at) || alike(first, at) : false,
    );
    if (found === undefined) classes.push({ group, members: [at], chance });
    else {
      found.members.push(at);
      found.chance += chance;
    }
  }
  return [...byGroup.values()].flat();
}
