import type { Candidate } from '../../shared/isolation/candidates.ts';
import { componentAt, deviceKey, relationOf } from '../../shared/isolation/components.ts';
import type { Decision, Option } from '../../shared/isolation/decision.ts';
import { searchExactly } from '../../shared/isolation/exact-search.ts';
import type { FaultModel } from '../../shared/isolation/hypotheses.ts';
import { rank } from '../../shared/isolation/rank.ts';
import { type Ahead, withoutUseless } from '../../shared/isolation/useless.ts';

/** One test that was made: which, whether it went on from the one before, and whether it came out quiet or stayed. */
export type Step = { id: string; goesOn: boolean; first: boolean };
/** What a strategy has to go by. */
export type Situation = { model: FaultModel; decision: Decision; steps: readonly Step[]; ahead: Ahead };
/** The option to take next; null to hand the case on. */
export type Strategy = (situation: Situation) => Option | null;

/** Ours. */
export const planned: Strategy = ({ decision, ahead }) => {
  const [best] = withoutUseless(decision, rank(decision), ahead);
  return best !== undefined && best.expectedMin < decision.escalationMin ? best.option : null;
};

/**
 * The exact optimum: the whole tree of a case is worked out at its start. Where the case leaves the tree, since watches
 * took other times than on average, it goes on as ours.
 */
export function optimumFrom(start: Decision, most: number): Strategy {
  const search = searchExactly(start, most);
  if (search === null) throw new Error('Too many options for the exact optimum.');
  const indexOf = ({ id }: Step, isAgain: boolean) =>
    start.options.findIndex(({ candidate, after }) => candidate.id === id && (after !== -1) === isAgain);
  return (situation) => {
    const outcomes = situation.steps.map((step, at, all) => ({
      index: indexOf(
        step,
        all.slice(0, at).some(({ id }) => id === step.id),
      ),
      first: step.first,
    }));
    const best = search.bestAfter(outcomes);
    if (best === null) return planned(situation);
    const id = start.options[best]?.candidate.id;
    return situation.decision.options.find((option) => option.candidate.id === id) ?? planned(situation);
  };
}

const targetKey = ({ action }: Candidate): string =>
  action.kind === 'menu' ? deviceKey(action.deviceId) : (componentAt(action.target) ?? '');
const named = ({ action }: Candidate): string => (action.kind === 'menu' ? 'menu' : action.test);

function leastOf(decision: Decision, scoreOf: (option: Option) => number): Option | null {
  let best: { option: Option; score: number } | null = null;
  for (const option of decision.options) {
    if (option.after !== -1) continue;
    const score = scoreOf(option);
    if (Number.isFinite(score) && (best === null || score < best.score)) best = { option, score };
  }
  return best?.option ?? null;
}

/**
 * Half-splitting: whatever divides the components that can still be at fault most evenly, each counted alike, the
 * quicker one where two divide them the same.
 */
export const halfSplitting: Strategy = ({ decision }) => {
  const left = new Float64Array(decision.groups.length);
  for (const [at, chance] of decision.chances.entries())
    left[decision.groupOf[at] ?? 0] = (left[decision.groupOf[at] ?? 0] ?? 0) + chance;
  const unevenness = (option: Option) => {
    const first = new Float64Array(left.length);
    for (const [at, chance] of decision.chances.entries()) {
      const group = decision.groupOf[at] ?? 0;
      first[group] = (first[group] ?? 0) + chance * (option.first[at] ?? 0);
    }
    const shares = [...first].flatMap((sum, group) =>
      (left[group] ?? 0) > 0.01 ? [sum / (left[group] ?? 1)] : [],
    );
    return Math.abs(shares.reduce((sum, share) => sum + share, 0) / shares.length - 0.5);
  };
  return leastOf(decision, (option) => Math.round(unevenness(option) * 50) * 10_000 + option.firstMin);
};

/** What is swapped or taken out at a component, the plainest first. */
const swaps = [
  'replaceCable',
  'temporaryCable',
  'otherSource',
  'bypassDevice',
  'substituteDisplay',
  'unplugBranch',
];
/** What is left to do at a component when swapping didn't help. */
const rest = [
  'movePort',
  'disableProcessing',
  'restoreSettings',
  'reissueHotPlug',
  'limitInputBandwidth',
  'limitOutputBandwidth',
  'insertSyncSwitch',
  'reseat',
  'updateFirmware',
];

/** Swapping along the chain from the source, one part after the other; then along it again with all else. */
export const fromTheSource: Strategy = ({ model, decision }) =>
  leastOf(decision, ({ candidate }) => {
    const key = targetKey(candidate);
    const swap = swaps.indexOf(named(candidate));
    const then = rest.indexOf(named(candidate));
    if (swap < 0 && then < 0) return Number.POSITIVE_INFINITY;
    const beside = model.scope.path.has(key) ? 0 : 1;
    const round = (swap >= 0 ? 0 : 2) + beside;
    return (round * 1000 + model.components.keys.indexOf(key)) * 100 + Math.max(swap, then);
  });

/** What puts a finding of the audit right. */
const cures: Readonly<Record<string, readonly string[]>> = {
  certification: ['replaceCable', 'temporaryCable'],
  'length-long': ['replaceCable', 'temporaryCable'],
  seating: ['reseat'],
  'port-mode': ['movePort'],
  'edid-management': ['disableProcessing', 'restoreSettings'],
  'firmware-level': ['updateFirmware'],
};
const isPrerequisite = (model: FaultModel, candidate: Candidate): boolean =>
  model.facts.findings.some(
    ({ rule, place, severity }) =>
      severity !== 'note' &&
      componentAt(place) === targetKey(candidate) &&
      (cures[rule] ?? []).includes(named(candidate)),
  );

/** The device nearest the display that draws a menu, between source and display where there is one. */
function pivotOf({ scope, components }: FaultModel): string {
  const path = components.keys.filter((key) => scope.path.has(key));
  const between = path.filter((key) => {
    const device = components.known.get(key)?.device;
    return device?.drawsMenu === true && device.role !== 'source' && device.role !== 'display';
  });
  return between.at(-1) ?? path.at(-1) ?? '';
}

/**
 * The order of a paper guide: put right what the audit found; find the side by the menu of one device; then on that
 * side the nearest cable first, then devices, then all the rest; then the same on the other side.
 */
export const paperGuide: Strategy = ({ model, decision, steps }) => {
  const pivot = pivotOf(model);
  const side = steps.find(({ id }) => id === `menu ${pivot}`)?.first ?? null;
  return leastOf(decision, ({ candidate }) => {
    if (isPrerequisite(model, candidate)) return 0;
    if (named(candidate) !== 'menu') return 10 + onPaper(model, candidate, pivot, side);
    return targetKey(candidate) === pivot && side === null ? 1 : Number.POSITIVE_INFINITY;
  });
};

function onPaper(model: FaultModel, candidate: Candidate, pivot: string, stayed: boolean | null): number {
  const { components, scope } = model;
  const key = targetKey(candidate);
  const swap = swaps.indexOf(named(candidate));
  const then = rest.indexOf(named(candidate));
  if (swap < 0 && then < 0) return Number.POSITIVE_INFINITY;
  const wrongSide = stayed === null ? null : stayed ? 'downstream' : 'upstream';
  const elsewhere = relationOf(components, pivot, key) === wrongSide ? 1 : 0;
  const beside = scope.path.has(key) ? 0 : 1;
  const round = swap < 0 ? 2 : key.startsWith('link:') ? 0 : 1;
  const distance = Math.abs(components.keys.indexOf(pivot) - components.keys.indexOf(key));
  return ((elsewhere * 2 + beside) * 3 + round) * 10_000 + distance * 100 + Math.max(swap, then);
}
