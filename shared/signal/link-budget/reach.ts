import type { LinkConstruction } from '../../contract/chain.ts';
import type { BudgetAssumptions } from './assumptions.ts';

/** How far a construction is counted on at a rate of one lane, Gbit/s; by rising rate, and no rate reaches further than one below. */
export type Reach = readonly { laneGbps: number; lengthM: number }[];

/**
 * Rates of one lane that the categories are tested for: a tenth of 74.25 and 340 MHz, a third of 18 Gbit/s, a quarter
 * of 48. HDMI compliance programme (from memory).
 */
export const testedLaneGbps = {
  standard: 0.7425,
  highSpeed: 3.4,
  premiumHighSpeed: 6,
  ultraHighSpeed: 12,
} as const;
const categories = ['standard', 'highSpeed', 'premiumHighSpeed', 'ultraHighSpeed'] as const;

/**
 * Wire whose reach the figures for passive copper stand for; assumed. The loss of a pair grows as its wire gets thinner,
 * so that its reach goes with the diameter, which a step of the American wire gauge divides by the 39th root of 92
 * (ASTM B258).
 */
const usualGaugeAwg = 26;
const perGaugeStep = 92 ** (1 / 39);

/** Lengths are "about": a tape measure and a foot rule differ by more than a tenth of a metre. */
export const toTenth = (lengthM: number): number => Math.round(lengthM * 10) / 10;

type Copper = {
  construction: Exclude<LinkConstruction, 'twistedPairExtender'>;
  gaugeAwg?: number | undefined;
};

/** The reach of an HDMI cable by its construction; active copper never reaches less than passive, nor optical than that. */
export function reachOf({ construction, gaugeAwg }: Copper, assumptions: BudgetAssumptions): Reach {
  const thin = gaugeAwg === undefined ? 1 : perGaugeStep ** (usualGaugeAwg - gaugeAwg);
  const times = construction === 'passiveCopper' ? thin : thin * Math.max(1, assumptions.activeCopperReach);
  let farthestM = Number.POSITIVE_INFINITY;
  return categories.map((category) => {
    farthestM = Math.min(farthestM, assumptions.passiveCopperReachM[category] * times);
    const isOptical = construction === 'activeOptical';
    const lengthM = isOptical ? Math.max(assumptions.activeOpticalReachM, farthestM) : farthestM;
    return { laneGbps: testedLaneGbps[category], lengthM };
  });
}

/**
 * The fastest lane that is counted on at a length, at most the fastest of the reach.
 *
 * Between two figures it falls as a power of the length, and past the last with its square: the loss of copper grows
 * with the length and with the root of the frequency, so that the same loss is met at a rate that falls with the square.
 */
export function laneAt(reach: Reach, lengthM: number): number {
  const length = toTenth(lengthM);
  const at = reach.findLastIndex((each) => each.lengthM >= length);
  const [first, reached, beyond] = [reach[0], reach[at], reach[at + 1]];
  if (reached === undefined) return first === undefined ? 0 : first.laneGbps * (first.lengthM / length) ** 2;
  if (beyond === undefined || length <= 0) return reached.laneGbps;
  const share = Math.log(reached.lengthM / length) / Math.log(reached.lengthM / beyond.lengthM);
  return reached.laneGbps * (beyond.laneGbps / reached.laneGbps) ** share;
}

/** The length up to which a lane of this rate is counted on: the other way round. */
export function reachAt(reach: Reach, laneGbps: number): number {
  const at = reach.findIndex((each) => each.laneGbps >= laneGbps);
  const [slower, faster] = [reach[at - 1], reach[at]];
  if (faster === undefined) return 0;
  if (slower === undefined) return faster.lengthM * Math.sqrt(faster.laneGbps / laneGbps);
  if (faster.lengthM === 0) return 0;
  const share = Math.log(laneGbps / slower.laneGbps) / Math.log(faster.laneGbps / slower.laneGbps);
  return slower.lengthM * (faster.lengthM / slower.lengthM) ** share;
}

/** The reach of what passes every rate alike up to a length. */
export const alike = (lengthM: number): Reach =>
  categories.map((category) => ({ laneGbps: testedLaneGbps[category], lengthM }));

/** The reach of a construction where its maker says how far it passes one rate. */
export const ratedReach = (usual: Reach, laneGbps: number, lengthM: number): Reach => [
  ...usual.filter((each) => each.laneGbps < laneGbps).map((each) => atLeast(each, lengthM)),
  { laneGbps, lengthM },
  ...usual.filter((each) => each.laneGbps > laneGbps).map((each) => atMost(each, lengthM)),
];
const atLeast = (each: Reach[number], lengthM: number) => ({
  ...each,
  lengthM: Math.max(each.lengthM, lengthM),
});
const atMost = (each: Reach[number], lengthM: number) => ({
  ...each,
  lengthM: Math.min(each.lengthM, lengthM),
});

/** The same reach, so many times further. */
export const further = (reach: Reach, times: number): Reach =>
  reach.map(({ laneGbps, lengthM }) => ({ laneGbps, lengthM: lengthM * times }));
