import { hasLabel } from '../../chain/tested-rate.ts';
import type { Link, LinkCategory } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import { frlRates, maxTmdsCharacterRateMHz } from '../format/index.ts';
import type { BudgetAssumptions } from './assumptions.ts';
import type { Capacity } from './capacity.ts';
import {
  alike,
  further,
  laneAt,
  type Reach,
  ratedReach,
  reachAt,
  reachOf,
  testedLaneGbps,
  toTenth,
} from './reach.ts';

/** Fast lanes: how fast one of them is driven, Gbit/s, and how many there are for a fixed rate, none for TMDS only. */
export type Lanes = { gbps: number; fixedRateLanes: 0 | 3 | 4 };

/**
 * What keeps a cable from being counted in full.
 * Known bad: `reversed`, `unpowered`; `category` and `rate`, when more is asked than it is tested or rated for; `length`,
 * past what any such cable reaches. Not known: `label`, `ends` fitted on site, `couplers`, `labelOfLong`, when a label is
 * hard to believe at that length, `categoryUnknown`, `rateUnknown`.
 */
export type CableCause =
  | 'reversed'
  | 'unpowered'
  | 'category'
  | 'rate'
  | 'length'
  | 'label'
  | 'labelOfLong'
  | 'ends'
  | 'couplers'
  | 'categoryUnknown'
  | 'rateUnknown';

/** What a cable's fast lanes pass. Data channel, hot plug, 5 V and return audio are no matter of these. */
export type CableCapacity = {
  /** What it may pass, as far as nothing is known to be wrong with it. */
  rated: Capacity;
  /** What can be counted on. */
  sure: Capacity;
  /** Why less is counted on than may be, or why it passes nothing, as clauses. */
  doubts: Message[];
};

const none: Lanes = { gbps: 0, fixedRateLanes: 0 };

/** The slower categories are tested on their three data pairs only; the rates there use lanes no faster than those (assumed). */
const lanesOf = (category: Exclude<LinkCategory, 'unknown'>): Lanes => ({
  gbps: testedLaneGbps[category],
  fixedRateLanes: category === 'standard' ? 0 : category === 'ultraHighSpeed' ? 4 : 3,
});

/** Above 18 Gbit/s there are four lanes; an extender of no more is taken to pass TMDS only (assumed). */
function lanesFor(gbps: number, { construction }: Link): Lanes {
  if (gbps > 18) return { gbps: gbps / 4, fixedRateLanes: 4 };
  return { gbps: gbps / 3, fixedRateLanes: construction === 'twistedPairExtender' ? 0 : 3 };
}

const capacityOf = ({ gbps, fixedRateLanes }: Lanes): Capacity => ({
  tmdsMHz: Math.min(Math.round(gbps * 1e8) / 1e6, maxTmdsCharacterRateMHz),
  frl: frlRates.findLast((rate) => rate.lanes <= fixedRateLanes && rate.gbpsPerLane <= gbps) ?? null,
});
const slower = (lanes: Lanes, gbps: number): Lanes => (gbps < lanes.gbps ? { ...lanes, gbps } : lanes);

/** All that bears on a cable's fast lanes, each on its own. */
type Facts = {
  unusable: 'reversed' | 'unpowered' | null;
  /** By its label, its maker's figure, or its kind; `known` where one of the first two says so. */
  kind: { may: Lanes; counted: Lanes; known: boolean };
  /** By its length: what it may still pass, and what is counted on, which is the same once a label was seen. */
  length: { reach: Reach; mayGbps: number; countedGbps: number };
  /** Share of the rate that is left by ends fitted on site and by couplers. */
  ends: number;
  couplers: number;
};

function factsOf(link: Link, assumptions: BudgetAssumptions): Facts {
  const reach = reachFor(link, assumptions);
  const kind = kindOf(link, assumptions);
  const isExtender = link.construction === 'twistedPairExtender';
  // Past the length of its pair an extender's own link is lost; it gets no slower.
  const isLost = isExtender && toTenth(link.lengthM) > reachAt(reach, kind.may.gbps);
  const mayGbps = isLost
    ? 0
    : laneAt(isExtender ? reach : further(reach, assumptions.farthestReach), link.lengthM);
  const countedGbps = isLost || link.certified ? mayGbps : laneAt(reach, link.lengthM);
  return {
    unusable: whyUnusable(link),
    kind,
    length: { reach, mayGbps, countedGbps },
    ends: link.factoryFittedEnds === false && !isExtender ? assumptions.siteFittedEnds : 1,
    couplers: leftByCouplers(link, assumptions),
  };
}

function reachFor(link: Link, assumptions: BudgetAssumptions): Reach {
  const { rated, construction } = link;
  if (construction === 'twistedPairExtender') return alike(rated?.lengthM ?? assumptions.twistedPairReachM);
  const usual = reachOf({ ...link, construction }, assumptions);
  if (construction === 'passiveCopper' || !rated?.lengthM) return usual;
  return ratedReach(usual, lanesFor(rated.gbps, link).gbps, rated.lengthM);
}

function kindOf(link: Link, { uncertified, unknownCategory, extenderTmdsMHz }: BudgetAssumptions) {
  const { category, construction, rated } = link;
  if (rated !== undefined && construction !== 'passiveCopper') {
    const lanes = lanesFor(rated.gbps, link);
    return { may: lanes, counted: lanes, known: true };
  }
  if (construction === 'twistedPairExtender') {
    if (category === 'unknown')
      return { may: lanesFor(18, link), counted: { ...none, gbps: extenderTmdsMHz / 100 }, known: false };
    const lanes = lanesOf(category);
    const own = category === 'ultraHighSpeed' ? lanes : { ...lanes, fixedRateLanes: 0 as const };
    return { may: own, counted: own, known: true };
  }
  if (category === 'unknown')
    return { may: lanesOf('ultraHighSpeed'), counted: lanesOf(unknownCategory), known: false };
  const may = lanesOf(category);
  if (link.certified || !hasLabel(category)) return { may, counted: may, known: true };
  // Whatever its label turns out to be, it is no worse than what bears none.
  const least = category === 'ultraHighSpeed' ? testedLaneGbps.premiumHighSpeed * uncertified : 0;
  const gbps = Math.max(may.gbps * uncertified, least, testedLaneGbps.highSpeed);
  return { may, counted: slower(may, gbps), known: true };
}

function leftByCouplers({ construction, couplers = 0 }: Link, { perCoupler }: BudgetAssumptions): number {
  if (couplers === 0 || construction === 'twistedPairExtender') return 1;
  // Electronics at a joint find neither a source nor the 5 V of one.
  return construction === 'passiveCopper' ? perCoupler ** couplers : 0;
}

/**
 * What a cable passes by its category, construction, length, gauge, ends, couplers and lie.
 *
 * No category fixes a length: a cable passes its test or doesn't. So a label that was seen lets it reach further, as far
 * as such cables are made; without one it is counted on as far as any cable of its construction.
 */
export function cableCapacity(link: Link, assumptions: BudgetAssumptions): CableCapacity {
  const facts = factsOf(link, assumptions);
  const { unusable, kind, length } = facts;
  if (unusable !== null)
    return { rated: capacityOf(none), sure: capacityOf(none), doubts: [unusableClauses[unusable]] };
  return {
    rated: capacityOf(mayPass(link, facts)),
    sure: capacityOf(countedOn(facts)),
    doubts: [
      ...(link.construction === 'twistedPairExtender' && !kind.known ? [message('doubtExtender')] : []),
      ...(link.construction !== 'twistedPairExtender' && !kind.known ? [message('doubtCategory')] : []),
      ...(kind.known && kind.counted.gbps < kind.may.gbps ? [message('doubtCertification')] : []),
      ...(facts.ends < 1 ? [message('doubtSiteFittedEnds')] : []),
      ...(facts.couplers < 1 ? [message('doubtCouplers')] : []),
      ...(length.countedGbps < kind.counted.gbps
        ? [
            message('doubtLength', {
              length: link.lengthM,
              counted: reachAt(length.reach, kind.counted.gbps),
            }),
          ]
        : []),
    ],
  };
}

const unusableClauses = { reversed: message('doubtReversed'), unpowered: message('doubtWithoutPower') };

/** A label says that it passes its rate, whoever doubts it; without one, no cable passes more than its length allows. */
const mayPass = ({ certified, construction }: Link, { kind, length }: Facts): Lanes =>
  certified && construction !== 'twistedPairExtender' ? kind.may : slower(kind.may, length.mayGbps);

function countedOn({ kind, length, ends, couplers }: Facts): Lanes {
  const whole = slower(kind.counted, length.countedGbps);
  return slower(whole, whole.gbps * ends * couplers);
}

/** A cable with electronics in it passes nothing the wrong way round, or without the power its maker asks for. */
function whyUnusable({ construction, direction, sourceEnd, sinkEnd }: Link): Facts['unusable'] {
  if (construction === 'passiveCopper') return null;
  if (direction === 'reversed') return 'reversed';
  const unpowered = [sourceEnd, sinkEnd].some((end) => end.needsPower && end.powered === 'no');
  return unpowered ? 'unpowered' : null;
}

/** What keeps a cable from passing lanes of a rate, and what it is good for in that respect. */
export type CableShortfall = {
  cause: CableCause;
  /** It can't; else it only can't be counted on. */
  isKnown: boolean;
  /** How far its construction is counted on at that rate, and how far usual passive copper is, metres. */
  reachM: number;
  passiveReachM: number;
};

/** The one thing to put right for a cable to pass such lanes: the first that stands in the way; null where it passes them. */
export function cableShortfall(
  link: Link,
  asked: Lanes,
  assumptions: BudgetAssumptions,
): CableShortfall | null {
  const facts = factsOf(link, assumptions);
  const { kind, length } = facts;
  const reachM = reachAt(length.reach, asked.gbps);
  const passiveReachM = reachAt(reachOf({ construction: 'passiveCopper' }, assumptions), asked.gbps);
  const found = (cause: CableCause, isKnown: boolean): CableShortfall => ({
    cause,
    isKnown,
    reachM,
    passiveReachM,
  });
  const isEnough = (lanes: Lanes): boolean =>
    lanes.gbps >= asked.gbps && lanes.fixedRateLanes >= asked.fixedRateLanes;
  if (facts.unusable !== null) return found(facts.unusable, true);
  const isRated = link.construction === 'twistedPairExtender' || link.rated !== undefined;
  if (!isEnough(kind.may)) return found(isRated ? 'rate' : 'category', true);
  if (!isEnough(mayPass(link, facts))) return found('length', true);
  if (isEnough(countedOn(facts))) return null;
  if (facts.couplers < 1) return found('couplers', false);
  if (!kind.known) return found(isRated ? 'rateUnknown' : 'categoryUnknown', false);
  if (length.countedGbps < asked.gbps) return found(link.certified ? 'labelOfLong' : 'length', false);
  return found(isEnough(kind.counted) ? 'ends' : 'label', false);
}
