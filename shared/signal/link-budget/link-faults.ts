import type { Chain, VideoFormat } from '../../contract/chain.ts';
import { organisationDefaults } from '../../contract/defaults.ts';
import { leastFrlRate, tmdsBitRateGbps } from '../format/index.ts';
import { askedOf } from './asked.ts';
import type { BudgetAssumptions } from './assumptions.ts';
import type { WantedOnLink } from './budget.ts';
import { type CableShortfall, cableShortfall, type Lanes } from './cable.ts';
import { type Capacity, frlGbps, leastOf, modeCapacity } from './capacity.ts';
import { type JudgedRun, judgeRuns } from './judged-run.ts';
import type { Loss } from './losses.ts';
import { type EdidHand, seenEdids } from './seen-edid.ts';
import { frlNeedGbps, type RateNeed, wayOver } from './verdict.ts';
import { type Run, type Wiring, wiringOf } from './wiring.ts';
import { verdictSentence } from './words.ts';

/** What is asked of one link: a picture, or a plain rate where the record wants none. */
export type AskedOfLink = {
  needGbps: number;
  /** Null for a plain rate. */
  judged: WantedOnLink | null;
};

/** One thing that keeps a link from carrying what is asked of it; several formats that it keeps out make one fault. */
export type LinkFault = AskedOfLink &
  (
    | { of: 'cable'; shortfall: CableShortfall }
    /** A socket that could pass it, and is set not to. */
    | { of: 'setting'; end: 'output' | 'input' }
    /** A socket that can't pass it. */
    | { of: 'socket'; ends: ('output' | 'input')[] }
    /** The picture goes, and something of it is lost at these devices. */
    | { of: 'loss'; losses: Loss[] }
    /** The EDID seen doesn't offer it, with what was done to that on its way. */
    | { of: 'edid'; hands: readonly EdidHand[] }
    | { of: 'onlyCompressed' | 'noSuchFormat' | 'noLinkCarries' }
  );

export type FaultyRun = { run: Run; faults: LinkFault[] };

/**
 * What is wrong with each link of a chain for the formats wanted over it, element by element: a cable that falls short is
 * found beside a socket that is set too low. A link has no fault exactly when its budget says that all of them fit.
 *
 * @param wanted none for `requiredGbps`, as far as the sockets at both ends of a link can do that
 */
export function linkFaults(
  chain: Chain,
  { requiredGbps, ...options }: { requiredGbps: number; assumptions?: Partial<BudgetAssumptions> },
): FaultyRun[] {
  const assumptions = { ...organisationDefaults.budget, ...options.assumptions };
  const wiring = wiringOf(chain);
  const asked = pictures(wiring, judgeRuns(wiring, seenEdids(wiring), assumptions));
  return wiring.runs.map((run) => {
    const asks =
      chain.wantedFormats.length > 0 ? (asked.get(run.link.id) ?? []) : [plainRate(run, requiredGbps)];
    return { run, faults: worstOfEach(asks.flatMap((each) => faultsOf(run, each, assumptions))) };
  });
}

type Ask = AskedOfLink & {
  need: RateNeed;
  canBeSent: boolean;
  carriedSomehow: boolean;
  hands: readonly EdidHand[];
};

function pictures(wiring: Wiring, judged: readonly JudgedRun[]): ReadonlyMap<string, Ask[]> {
  const wanted = wiring.chain.wantedFormats.map((format) => ({ format, runs: askedOf(wiring, format) }));
  return new Map(
    judged.map((each) => {
      const here = wanted.filter(({ runs }) => runs.has(each.run.link.id));
      return [each.run.link.id, here.flatMap(({ format }) => picturesOn(wiring.chain, each, format))];
    }),
  );
}

const picturesOn = (chain: Chain, judged: JudgedRun, wanted: VideoFormat): Ask[] =>
  judged.carries(wanted).map((format): Ask => {
    const verdict = judged.judge(format);
    const need = judged.needOf(format);
    const sentence = verdictSentence(chain, judged.run, judged.elements, verdict);
    return {
      need,
      needGbps: need.tmds?.fits ? need.tmds.bitRateGbps : (verdict.figures?.needGbps ?? 0),
      judged: { wanted, ...verdict, sentence },
      canBeSent: need.tmds !== null,
      carriedSomehow: need.tmds?.fits === true || need.leastFrlRate !== null,
      hands: judged.seen.hands,
    };
  });

function plainRate({ output, input }: Run, requiredGbps: number): Ask {
  const asMHz = ({ tmdsMHz, frl }: Capacity): number => (frl === null ? tmdsMHz : (frlGbps(frl) * 100) / 3);
  const characterRateMHz = Math.min(
    (requiredGbps * 100) / 3,
    asMHz(modeCapacity(output.highestMode)),
    asMHz(modeCapacity(input.highestMode)),
  );
  const needGbps = tmdsBitRateGbps(characterRateMHz);
  const frl = { bitRateGbps: needGbps };
  return {
    need: { tmds: { characterRateMHz }, frl: { threeLanes: frl, fourLanes: frl } },
    needGbps,
    judged: null,
    canBeSent: true,
    carriedSomehow: true,
    hands: [],
  };
}

function faultsOf(run: Run, ask: Ask, assumptions: BudgetAssumptions): LinkFault[] {
  const { judged, need, hands } = ask;
  const losses = judged?.losses ?? [];
  const { output, input } = run;
  const highest = { output: modeCapacity(output.highestMode), input: modeCapacity(input.highestMode) };
  const both = leastOf([highest.output, highest.input]);
  const asked: AskedOfLink = { needGbps: fixedRateNeedGbps(need, both) ?? ask.needGbps, judged };
  const lost: LinkFault[] = losses.length > 0 ? [{ ...asked, of: 'loss', losses }] : [];
  const goes = (capacity: Capacity): boolean => wayOver(need, capacity) !== null;

  if (!ask.canBeSent) return [{ ...asked, of: 'noSuchFormat' }];
  if (!goes(both)) {
    // Whether the source compresses doesn't matter before it is told that it may send the picture.
    if (judged?.compressed)
      return [
        judged.refusals.length > 0 ? { ...asked, of: 'edid', hands } : { ...asked, of: 'onlyCompressed' },
        ...lost,
      ];
    const ends = (['output', 'input'] as const).filter((end) => !goes(highest[end]));
    return [
      ...(ask.carriedSomehow
        ? [{ ...asked, of: 'socket' as const, ends }]
        : [{ ...asked, of: 'noLinkCarries' as const }]),
      ...lost,
    ];
  }
  const settings = (
    [
      ['output', output],
      ['input', input],
    ] as const
  ).flatMap(([end, { setMode }]): LinkFault[] =>
    setMode === null || goes(leastOf([both, modeCapacity(setMode)]))
      ? []
      : [{ ...asked, of: 'setting', end }],
  );
  const shortfall = leastShortfall(run, lanesOf(need, both), assumptions);
  const cable: LinkFault[] = shortfall === null ? [] : [{ ...asked, of: 'cable', shortfall }];
  const isRefused = judged !== null && judged.refusals.length > 0;
  const found = [...settings, ...cable];
  const isCarried = judged === null || judged.verdict === 'fits' || judged.verdict === 'reduced';
  const onItsOwn = found.length === 0 && !isCarried;
  // A socket that is set too low tells the source so: its EDID is no fault of its own then.
  const edid: LinkFault[] =
    onItsOwn || (isRefused && settings.length === 0) ? [{ ...asked, of: 'edid', hands }] : [];
  return [...found, ...edid, ...lost];
}

/** What it takes of a fixed rate link, where that is the way it goes; else null. */
const fixedRateNeedGbps = (need: RateNeed, both: Capacity): number | null =>
  need.frl !== null && wayOver(need, both) === 'frl' ? frlNeedGbps(need.frl, both) : null;

/** The lanes that a picture takes, on each way that the sockets leave open. */
function lanesOf({ tmds, frl }: RateNeed, both: Capacity): Lanes[] {
  const rate = frl && both.frl && leastFrlRate(frl);
  return [
    ...(tmds !== null && tmds.characterRateMHz <= both.tmdsMHz
      ? [{ gbps: tmds.characterRateMHz / 100, fixedRateLanes: 0 as const }]
      : []),
    ...(rate ? [{ gbps: rate.gbpsPerLane, fixedRateLanes: rate.lanes }] : []),
  ];
}

/** Nothing where one of the ways goes; else what stands in the way that comes nearest. */
function leastShortfall(
  { link }: Run,
  ways: readonly Lanes[],
  assumptions: BudgetAssumptions,
): CableShortfall | null {
  const found = ways.map((lanes) => cableShortfall(link, lanes, assumptions));
  if (found.includes(null)) return null;
  const [first, ...others] = found.filter((each) => each !== null);
  return others.find(({ isKnown }) => first?.isKnown === true && !isKnown) ?? first ?? null;
}

/** Of the faults of one element the one by the picture that is furthest off. */
function worstOfEach(faults: readonly LinkFault[]): LinkFault[] {
  const worst = new Map<unknown, LinkFault>();
  for (const fault of faults) {
    const key = fault.of === 'loss' ? fault : fault.of === 'setting' ? `${fault.of} ${fault.end}` : fault.of;
    const before = worst.get(key);
    if (before === undefined || isWorse(fault, before)) worst.set(key, fault);
  }
  return [...worst.values()];
}

function isWorse(one: LinkFault, other: LinkFault): boolean {
  if (one.of === 'cable' && other.of === 'cable' && one.shortfall.isKnown !== other.shortfall.isKnown)
    return one.shortfall.isKnown;
  return one.needGbps > other.needGbps;
}
