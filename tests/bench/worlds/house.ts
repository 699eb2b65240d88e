import type { Place } from '../../../shared/contract/chain.ts';
import type { Case, Result } from '../../../shared/isolation/case.ts';
import type { TestKind } from '../../../shared/isolation/effect-table.ts';
import { type FailureMode, outside } from '../../../shared/isolation/failure-modes.ts';
import { type FaultModel, faultModelOf, type Hypothesis } from '../../../shared/isolation/hypotheses.ts';
import { effectsOf } from '../../../shared/isolation/likelihood.ts';
import { menuStaysChance } from '../../../shared/isolation/menu-stays.ts';
import type { PlannedTest } from '../../../shared/isolation/plan-wording.ts';
import { pick, randomFrom, seedOf } from '../../support/random.ts';
import { watchOf } from '../isolation-world.ts';
import { worldFigures as figures, worldTable } from './figures.ts';
import {
  between,
  normal,
  type Random,
  type Reproduced,
  type Rhythm,
  reproduce,
  rhythmIn,
  timesIn,
} from './occurrences.ts';
import type { WorldKind } from './worlds.ts';

/** Changes after which the devices start cold. */
const startsCold: ReadonlySet<TestKind> = new Set<TestKind>([
  'powerCycle',
  'mainsOffForAll',
  'otherOutlet',
  'otherSupply',
  'oneSocketCircuit',
  'otherWakeOrder',
  'updateFirmware',
  'bypassDevice',
  'substituteDisplay',
  'otherSource',
  'moveProcessorToDisplay',
]);
/** Faults that a lower rate doesn't ask anything of. */
const ofTheRate: readonly FailureMode[] = ['bandwidth', 'portMode', 'processing'];

type Fault = { at: number; truth: Hypothesis; rhythm: Rhythm; left: Map<string, number> };
export type Seen = { results: Result[]; minutes: number };

/** One house with what is wrong in it, and what whoever does something there gets to see. */
export class House {
  readonly reproduced: Reproduced;
  readonly faults: readonly Fault[];
  private readonly model: FaultModel;
  private readonly kind: WorldKind;
  private readonly random: Random;
  private readonly minutesPerTry: number;
  private readonly once = new Map<string, boolean>();
  private readonly spread = new Map<string, number>();

  /** @param facts of the case but for its baseline; @returns null where the fault can't be reproduced */
  static of(facts: Case, kind: WorldKind, seed: number): House | null {
    const random = randomFrom(seed);
    const minutesPerTry = worldTable.planning.oneTry.figures.minutes ?? 2;
    const model = faultModelOf(facts, worldTable);
    const weights = weightsIn(model, kind, seed);
    const main = rhythmIn(kind, random);
    const reproduced = reproduce(kind, main, random);
    if (reproduced === null) return null;
    const faultOf = (rhythm: Rhythm): Fault => {
      const at = pick(weights, random);
      const truth = model.hypotheses[at] ?? { component: outside, mode: outside };
      return { at, truth, rhythm, left: new Map() };
    };
    const faults = [faultOf(main)];
    if (random() < kind.two) {
      const second = rhythmIn(kind, random);
      if (second.mode === main.mode) faults.push(faultOf(second));
    }
    return new House({ model, kind, random, minutesPerTry, reproduced, faults });
  }

  private constructor(of: {
    model: FaultModel;
    kind: WorldKind;
    random: Random;
    minutesPerTry: number;
    reproduced: Reproduced;
    faults: readonly Fault[];
  }) {
    this.model = of.model;
    this.kind = of.kind;
    this.random = of.random;
    this.minutesPerTry = of.minutesPerTry;
    this.reproduced = of.reproduced;
    this.faults = of.faults;
  }

  isTrue(component: string): boolean {
    return this.faults.some(({ truth }) => truth.component === component);
  }

  /** @param exposure minutes or tries to watch at most; @param goesOn the change is in place already */
  perform({ candidate }: Pick<PlannedTest, 'candidate'>, exposure: number, goesOn: boolean): Seen {
    const { action, setupMin, restoreMin, riskMin } = candidate;
    const around = goesOn ? 0 : setupMin + restoreMin + riskMin;
    if (action.kind === 'menu') return this.menu(action.deviceId, exposure, around);
    const cold = !goesOn && startsCold.has(action.test);
    const left = this.faults.map((fault) => this.leftOf(fault, action, candidate.id));
    const watched = this.watch({ exposure, onMin: cold ? 0 : 1e6, left });
    const { test, target } = action;
    return {
      minutes: around + watched.minutes,
      results: [{ kind: 'test', test, target, watch: watched.record }],
    };
  }

  /** Watches after a part was repaired: whether the fault was seen, in so much watching. */
  seenAfterRepair(component: string, exposure: number): { seen: boolean; minutes: number } {
    const left = this.faults.map(({ truth }) =>
      truth.component === component && this.random() < figures.repairWorks ? 0 : 1,
    );
    const { seen, minutes } = this.watch({ exposure, onMin: 0, left });
    return { seen, minutes };
  }

  private menu(deviceId: string, exposure: number, around: number): Seen {
    const watched = this.watch({ exposure, onMin: 1e6, left: this.faults.map(() => 1) });
    const { by } = watched;
    const minutes = around + watched.minutes;
    if (by === null) return { minutes, results: [] };
    const tells = this.drawn(`tells ${deviceId}`, () => 1 - (worldTable.menuStays.notKnown.figures.any ?? 0));
    const chance = by === 'ghost' ? 0.5 : menuStaysChance(this.model, deviceId, by.truth);
    const stays = tells && this.drawn(`menu ${deviceId} ${by === 'ghost' ? 'ghost' : by.at}`, () => chance);
    const misread = this.kind.observersErr
      ? figures.errors.misread
      : (worldTable.menuStays.misread.figures.any ?? 0);
    const answer = stays !== this.random() < misread ? 'stayed' : 'vanished';
    return { minutes, results: [{ kind: 'menu', deviceId, answer }] };
  }

  /** What a change leaves of a fault's rate: nothing, part of it, or all. */
  private leftOf(fault: Fault, made: { test: TestKind; target: Place }, id: string): number {
    const known = fault.left.get(id);
    if (known !== undefined) return known;
    const effects = effectsOf(this.model, made);
    let because = effects.because[fault.at] ?? 0;
    const { mode } = fault.truth;
    if (this.kind.lowerRateSource && made.test === 'otherSource' && ofTheRate.includes(mode))
      because = Math.max(because, figures.lowerRateHides);
    if (this.kind.effects && because > 0 && because < 1)
      because = shifted(because, this.spreadOf(`${made.test} ${mode}`));
    let left = 1;
    if (this.random() < because) {
      const thins = this.kind.effects && this.random() < figures.thins.share;
      left = thins ? between(this.random, figures.thins.left) : 0;
    } else if (this.random() < (effects.coincidence[fault.at] ?? 0)) left = 0;
    if (left > 0 && this.random() < (effects.provoked[fault.at] ?? 0)) left = 1e6;
    fault.left.set(id, left);
    return left;
  }

  private spreadOf(key: string): number {
    const known = this.spread.get(key) ?? normal(this.random) * figures.effectSpread;
    this.spread.set(key, known);
    return known;
  }

  private drawn(key: string, chance: () => number): boolean {
    const known = this.once.get(key) ?? this.random() < chance();
    this.once.set(key, known);
    return known;
  }

  /** Watches until the fault is seen, or for so long. */
  private watch({ exposure, onMin, left }: { exposure: number; onMin: number; left: readonly number[] }) {
    const { mode } = this.reproduced.baseline;
    let first = Number.POSITIVE_INFINITY;
    let by: Fault | 'ghost' | null = null;
    for (const [at, fault] of this.faults.entries()) {
      const when = this.firstSeen(fault, { exposure, onMin, left: left[at] ?? 1 });
      if (when < first) [first, by] = [when, fault];
    }
    if (this.kind.observersErr && this.random() < figures.errors.ghost) {
      const when = mode === 'time' ? this.random() * exposure : Math.ceil(this.random() * exposure);
      if (when < first) [first, by] = [when, 'ghost'];
    }
    const seen = first <= exposure;
    const length = seen ? first : exposure;
    const minutes = mode === 'time' ? length : length * this.minutesPerTry;
    return { seen, by: seen ? by : null, minutes, record: watchOf(mode, length, seen) };
  }

  private firstSeen(
    fault: Fault,
    { exposure, onMin, left }: { exposure: number; onMin: number; left: number },
  ) {
    const { rhythm } = fault;
    const isSeen = () => !(this.kind.observersErr && this.random() < figures.errors.missed);
    if (left === 0) return Number.POSITIVE_INFINITY;
    if (rhythm.mode === 'trigger') {
      for (let at = 1; at <= exposure; at += 1)
        if (this.random() < Math.min(0.98, rhythm.chance * left) && isSeen()) return at;
      return Number.POSITIVE_INFINITY;
    }
    // What is provoked comes at once; else the fault keeps its rhythm, thinned out where that is all a change does.
    if (left > 1) return Math.min(exposure, 1);
    const times = timesIn(
      { ...rhythm, perMin: rhythm.perMin * left },
      { lengthMin: exposure, onMin },
      this.random,
    );
    return times.find(isSeen) ?? Number.POSITIVE_INFINITY;
  }
}

const shifted = (chance: number, by: number): number =>
  1 / (1 + Math.exp(-Math.log(chance / (1 - chance)) - by));

/** Chances of the causes in this house. */
function weightsIn(model: FaultModel, { priors, outside: share }: WorldKind, seed: number): number[] {
  const weights = model.prior.map((chance, at) => {
    if (priors === null) return chance;
    const { component, mode } = model.hypotheses[at] ?? { component: outside, mode: outside };
    const { device, link } = model.components.known.get(component) ?? { device: null, link: null };
    const text = `${device?.role ?? link?.construction ?? component} ${mode} ${priors.by === 'house' ? seed : ''}`;
    return chance * priors.factor ** (2 * randomFrom(seedOf(text))() - 1);
  });
  if (share === null) return weights;
  const at = model.hypotheses.findIndex(({ component }) => component === outside);
  const others = weights.reduce((sum, weight, index) => sum + (index === at ? 0 : weight), 0);
  return weights.map((weight, index) => (index === at ? (others * share) / (1 - share) : weight));
}
