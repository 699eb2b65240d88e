import type { Link, LinkCategory } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import type { BudgetAssumptions } from './assumptions.ts';
import { type Capacity, nothing, scaled } from './capacity.ts';

/** A cable as its label sells it, and what of that can be counted on. */
export type CableCapacity = {
  rated: Capacity;
  sure: Capacity;
  /** Why less is counted on, as clauses; empty when it is counted in full. Each is assumed. */
  doubts: Message[];
};

/*
 * TMDS: HDMI compliance programme, cable categories (from memory). Fixed rates: 48 Gbit/s is what Ultra High Speed is
 * tested for. The slower categories are tested on their three data pairs only; the rates there use lanes no faster
 * than the pairs were tested at (assumed).
 */
const ratings: Record<Exclude<LinkCategory, 'unknown'>, Capacity> = {
  standard: { tmdsMHz: 74.25, frl: null },
  highSpeed: { tmdsMHz: 340, frl: { lanes: 3, gbpsPerLane: 3 } },
  premiumHighSpeed: { tmdsMHz: 600, frl: { lanes: 3, gbpsPerLane: 6 } },
  ultraHighSpeed: { tmdsMHz: 600, frl: { lanes: 4, gbpsPerLane: 12 } },
};

/**
 * What a cable carries by its category, construction, length, ends and lie.
 *
 * Past its reach the rate is counted down with the square of the length: the loss of copper grows with the length and
 * with the root of the frequency, so the same loss is met at a frequency that falls with the square (assumed).
 */
export function cableCapacity(link: Link, assumptions: BudgetAssumptions): CableCapacity {
  const unusable = whyUnusable(link);
  const rated = ratedCapacity(link, assumptions);
  if (unusable !== null) return { rated, sure: nothing, doubts: [unusable] };
  const counted =
    link.category === 'unknown' && link.construction !== 'twistedPairExtender'
      ? ratings[assumptions.unknownCategory]
      : rated;
  const reductions = [...whyNotByLabel(link, assumptions), ...whyTooLong(link, assumptions)];
  const factor = reductions.reduce((product, each) => product * each.factor, 1);
  return { rated, sure: scaled(counted, factor), doubts: reductions.map(({ because }) => because) };
}

function ratedCapacity({ category, construction }: Link, { extenderTmdsMHz }: BudgetAssumptions): Capacity {
  if (construction === 'twistedPairExtender') return { tmdsMHz: extenderTmdsMHz, frl: null };
  return ratings[category === 'unknown' ? 'ultraHighSpeed' : category];
}

type Reduction = { factor: number; because: Message };

function whyNotByLabel(link: Link, assumptions: BudgetAssumptions): Reduction[] {
  const reductions: Reduction[] = [];
  if (link.construction === 'twistedPairExtender')
    reductions.push({ factor: 1, because: message('doubtExtender') });
  else if (link.category === 'unknown') reductions.push({ factor: 1, because: message('doubtCategory') });
  else if (!link.certified)
    reductions.push({ factor: assumptions.uncertified, because: message('doubtCertification') });
  if (link.factoryFittedEnds === false)
    reductions.push({ factor: assumptions.siteFittedEnds, because: message('doubtSiteFittedEnds') });
  return reductions;
}

function whyTooLong(link: Link, assumptions: BudgetAssumptions): Reduction[] {
  const reachM = reachOf(link, assumptions);
  if (reachM === null || link.lengthM <= reachM) return [];
  return [
    {
      factor: (reachM / link.lengthM) ** 2,
      because: message('doubtLength', { length: link.lengthM, counted: reachM }),
    },
  ];
}

/** Null where length has no say: the stretch of an extender isn't an HDMI cable. */
function reachOf({ construction, category }: Link, assumptions: BudgetAssumptions): number | null {
  switch (construction) {
    case 'passiveCopper':
      return assumptions.passiveCopperReachM[category];
    case 'activeCopper':
      return assumptions.passiveCopperReachM[category] * assumptions.activeCopperReach;
    case 'activeOptical':
      return assumptions.activeOpticalReachM;
    case 'twistedPairExtender':
      return null;
  }
}

/** A cable with electronics in it passes nothing the wrong way round, or without the power its maker asks for. */
function whyUnusable({ construction, direction, sourceEnd, sinkEnd }: Link): Message | null {
  if (construction === 'passiveCopper') return null;
  if (direction === 'reversed') return message('doubtReversed');
  const unpowered = [sourceEnd, sinkEnd].some((end) => end.needsPower && end.powered === 'no');
  return unpowered ? message('doubtWithoutPower') : null;
}
