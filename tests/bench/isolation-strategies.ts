import type { Candidate } from '../../shared/isolation/candidates.ts';
import { componentAt, deviceKey, relationOf } from '../../shared/isolation/components.ts';
import type { Decision, Option } from '../../shared/isolation/decision.ts';
import type { FaultModel } from '../../shared/isolation/hypotheses.ts';
import { rank } from '../../shared/isolation/rank.ts';

/** What a strategy has to go by. */
export type Situation = {
  model: FaultModel;
  chances: readonly number[];
  decision: Decision;
  /** What the tests so far said, by the candidate's id: true for quiet, or a menu that stayed. */
  outcomes: ReadonlyMap<string, boolean>;
};
/** The option to take next; null to hand the case on. */
export type Strategy = (situation: Situation) => Option | null;

/** Ours. */
export const planned: Strategy = ({ decision }) => {
  const [best] = rank(decision);
  return best !== undefined && best.expectedMin < decision.escalationMin ? best.option : null;
};

const targetKey = ({ action }: Candidate): string | null =>
  action.kind === 'menu' ? deviceKey(action.deviceId) : componentAt(action.target);
const named = (candidate: Candidate): string =>
  candidate.action.kind === 'menu' ? 'menu' : candidate.action.test;

/**
 * Half-splitting: whatever divides the components that can still be at fault most evenly, each counted alike, the
 * quicker one where two divide them the same.
 */
export const halfSplitting: Strategy = ({ decision }) => {
  const left = decision.groups.map((_, group) =>
    decision.chances.reduce((sum, chance, at) => sum + (decision.groupOf[at] === group ? chance : 0), 0),
  );
  const possible = left.map((chance) => chance > 0.01);
  const unevenness = (option: Option) => {
    const first = new Float64Array(left.length);
    for (const [at, chance] of decision.chances.entries()) {
      const group = decision.groupOf[at] ?? 0;
      first[group] = (first[group] ?? 0) + chance * (option.first[at] ?? 0);
    }
    const shares = first.map((sum, group) => sum / (left[group] || 1)).filter((_, group) => possible[group]);
    return Math.abs(shares.reduce((sum, share) => sum + share, 0) / shares.length - 0.5);
  };
  return leastOf(decision, (option) => Math.round(unevenness(option) * 50) * 10_000 + option.firstMin);
};

function leastOf(decision: Decision, scoreOf: (option: Option) => number): Option | null {
  let best: { option: Option; score: number } | null = null;
  for (const option of decision.options) {
    if (option.after !== -1) continue;
    const score = scoreOf(option);
    if (Number.isFinite(score) && (best === null || score < best.score)) best = { option, score };
  }
  return best?.option ?? null;
}

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
    const at = model.components.keys.indexOf(targetKey(candidate) ?? '');
    const beside = model.scope.path.has(targetKey(candidate) ?? '') ? 0 : 1;
    const swap = swaps.indexOf(named(candidate));
    const then = rest.indexOf(named(candidate));
    const round = swap >= 0 ? 0 : then >= 0 ? 1 : Number.POSITIVE_INFINITY;
    return ((round * 2 + beside) * 1000 + at) * 100 + Math.max(swap, then);
  });

/**
 * The order of a paper guide: put right what the audit found; find the side by the menu of the device nearest the
 * display that has one; then on that side the nearest cable first, then devices, then all the rest.
 */
export const paperGuide: Strategy = ({ model, decision, outcomes }) => {
  const { components, scope } = model;
  const distance = (from: string, key: string) =>
    Math.abs(components.keys.indexOf(from) - components.keys.indexOf(key));
  const middle = [...scope.path].filter((key) => {
    const device = components.known.get(key)?.device;
    return device != null && device.drawsMenu && device.role !== 'source' && device.role !== 'display';
  });
  const pivot = middle.at(-1) ?? [...scope.path].at(-1) ?? '';
  const side = outcomes.get(`menu ${pivot}`);
  const cures: Record<string, string[]> = {
    certification: ['replaceCable', 'temporaryCable'],
    'length-long': ['replaceCable', 'temporaryCable'],
    seating: ['reseat'],
    'port-mode': ['movePort'],
    'edid-management': ['disableProcessing', 'restoreSettings'],
    'firmware-level': ['updateFirmware'],
  };
  return leastOf(decision, ({ candidate }) => {
    const name = named(candidate);
    const key = targetKey(candidate) ?? '';
    const prerequisite = model.facts.findings.some(
      ({ rule, place, severity }) =>
        severity !== 'note' && componentAt(place) === key && (cures[rule] ?? []).includes(name),
    );
    if (prerequisite) return 0;
    if (name === 'menu') return key === pivot && side === undefined ? 1 : Number.POSITIVE_INFINITY;
    const relation = relationOf(components, pivot, key);
    const onSide = side === undefined || (side ? relation !== 'downstream' : relation !== 'upstream');
    const beside = scope.path.has(key) ? 0 : 1;
    const kind = key.startsWith('link:') ? 0 : 1;
    const swap = swaps.indexOf(name);
    const then = rest.indexOf(name);
    if (swap < 0 && then < 0) return Number.POSITIVE_INFINITY;
    const round = swap >= 0 ? kind : 2;
    return (
      10 +
      (((onSide ? 0 : 1) * 2 + beside) * 3 + round) * 10_000 +
      distance(pivot, key) * 100 +
      Math.max(swap, then)
    );
  });
};
