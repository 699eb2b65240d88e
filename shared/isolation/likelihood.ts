import type { Place } from '../contract/chain.ts';
import type { OwnChange } from '../contract/own-change.ts';
import { changeCatalogue } from './change-catalogue.ts';
import type { EffectRow, Reach } from './change-facts.ts';
import { type Components, chainKey, componentAt, deviceKey, neighboursOf, relationOf } from './components.ts';
import { factsFromLogs, type TestKind } from './effect-table.ts';
import { outside } from './failure-modes.ts';
import { type FaultRate, quietChance } from './fault-rate.ts';
import type { FaultTable } from './fault-table.ts';
import { figureIn, figureOf } from './figures.ts';
import type { FaultModel, Hypothesis } from './hypotheses.ts';
import { menuStaysIn, tellsNothingChance } from './menu-stays.ts';
import { reachOf } from './reach.ts';
import { type Records, type TestRecord, testKey } from './test-record.ts';

/**
 * Chance that the fault stays away with a change in place: because of what it changes, or by coincidence; and that the
 * change itself brings it on.
 */
export type Effect = { because: number; coincidence: number; provoked: number };
/** A change of a kind at a place. */
type Made = { test: TestKind; target: Place; own?: OwnChange | null | undefined };

/** The effects of one change under all hypotheses of a model, in its order. */
export type Effects = { readonly [Each in keyof Effect]: Float64Array };

export const effectAt = ({ because, coincidence, provoked }: Effects, at: number): Effect => ({
  because: because[at] ?? 0,
  coincidence: coincidence[at] ?? 0,
  provoked: provoked[at] ?? 0,
});

/** What changes do under a model doesn't depend on results, so that replanning can use it again. */
const known = new WeakMap<FaultModel, { coincidence: Float64Array; ofChanges: Map<string, Effects> }>();

/**
 * Minutes or tries, by how the fault comes, in which a change that may bring it on is watched; null for every other
 * change, which is watched for as long as quiet takes to mean something.
 */
export function provokingExposure({ planning }: FaultTable, test: TestKind, mode: FaultRate['mode']) {
  const { provokingMin } = changeCatalogue[test];
  if (provokingMin === null) return null;
  return mode === 'trigger' || mode === 'look'
    ? Math.ceil(provokingMin / figureOf(planning.oneTry, 'minutes'))
    : provokingMin;
}

/** Chance, for each hypothesis of the model, that a change keeps the fault away. */
export function effectsOf(model: FaultModel, { test, target, own }: Made): Effects {
  const { coincidence, ofChanges } = knownOf(model);
  const key = testKey(test, target, own);
  const found = ofChanges.get(key) ?? computeEffects(model, { test, target, own }, coincidence);
  ofChanges.set(key, found);
  return found;
}

function knownOf(model: FaultModel) {
  const found = known.get(model);
  if (found !== undefined) return found;
  const { stays } = model.table.coincidence;
  const [moved, other] = [figureIn(stays, 'contact') ?? 0, figureIn(stays, 'other') ?? 0];
  const coincidence = Float64Array.from(model.hypotheses, ({ mode }) => (mode === 'contact' ? moved : other));
  const made = { coincidence, ofChanges: new Map<string, Effects>() };
  known.set(model, made);
  return made;
}

/** The chances that an organisation gives its own kind; without a figure, those of a change that nobody knows. */
function rowsOfOwn({ keepsAway, reachesNeighbours }: OwnChange): Partial<Record<Reach, EffectRow>> | null {
  if (keepsAway === null) return null;
  const row: EffectRow = { origin: 'organisation', figures: { any: keepsAway } };
  return reachesNeighbours ? { target: row, ends: row } : { target: row };
}

function computeEffects(model: FaultModel, { test, target, own }: Made, coincidence: Float64Array): Effects {
  const { table } = model;
  const done = { test, target };
  return {
    because: strongestIn(model, done, (own == null ? null : rowsOfOwn(own)) ?? table.effects[test]),
    coincidence,
    provoked: strongestIn(model, done, table.provocations[test]),
  };
}

/** The strongest figure of all rows that reach each hypothesis; 0 where none does. */
function strongestIn(
  { components, scope, hypotheses, hypothesesAt }: FaultModel,
  done: { test: TestKind; target: Place },
  rows: Partial<Record<Reach, EffectRow>>,
): Float64Array {
  const strongest = new Float64Array(hypotheses.length);
  for (const [reach, row] of Object.entries(rows) as [Reach, EffectRow][])
    for (const key of reachOf(components, scope, done, reach))
      for (const at of hypothesesAt.get(key) ?? []) {
        const figure = figureIn(row, hypotheses[at]?.mode ?? outside) ?? 0;
        strongest[at] = Math.max(strongest[at] ?? 0, figure);
      }
  return strongest;
}

/** Chance that the fault stays away for either reason, 0..1. */
export const staysAway = ({ because, coincidence }: Omit<Effect, 'provoked'>): number =>
  because + (1 - because) * coincidence;

/** The same under each hypothesis. */
export const awayIn = (effects: Effects): Float64Array =>
  effects.because.map((because, at) => staysAway({ because, coincidence: effects.coincidence[at] ?? 0 }));

/** Chance that nothing is seen while a change that may bring the fault on is watched, whose quiet is this likely. */
function quietWhileProvoked(effect: Effect, quiet: number): number {
  const away = staysAway(effect);
  return (1 - effect.provoked) * (away + (1 - away) * quiet);
}

/** The same under each hypothesis. */
export const quietInAll = (effects: Effects, quiet: number): Float64Array =>
  effects.because.map((_, at) => quietWhileProvoked(effectAt(effects, at), quiet));

/**
 * Likelihood of all results under each hypothesis, exactly. Watches of one change share what the change does; all
 * watches share one unknown rate of the fault, which is integrated out, so that being fooled twice counts as what
 * it is: a sign that the fault comes less often than the baseline said.
 */
export function likelihoodsOf(model: FaultModel, records: Records): number[] {
  const tests = [...records.tests.values()].map((record) => ({
    record,
    effects: effectsOf(model, record),
  }));
  const older = records.discounted.map((each) => ({
    power: figureOf(model.table.weighing.trust, each.trust),
    likelihoods: likelihoodsOf(model, { ...each, discounted: [], rate: records.rate }),
  }));
  return model.hypotheses.map((hypothesis, at) => {
    const ways = tests.map(({ record, effects }) =>
      waysOf({ record, effect: effectAt(effects, at), table: model.table, rate: records.rate }),
    );
    let likelihood = chanceOfWays(ways, records.rate);
    for (const { power, likelihoods } of older) likelihood *= (likelihoods[at] ?? 1) ** power;
    for (const [deviceId, answers] of records.menus)
      likelihood *= menuLikelihood(model, deviceId, answers, at);
    for (const reading of records.readings) likelihood *= readingLikelihood(model, reading, hypothesis);
    for (const witness of records.witnesses) likelihood *= witnessLikelihood(model, witness, hypothesis);
    return likelihood * factsLikelihood(model, records.facts, hypothesis);
  });
}

/** What facts multiply a hypothesis by. All that logs tell of it is one thing said in many ways: the strongest counts. */
function factsLikelihood(
  { table, components }: FaultModel,
  facts: Records['facts'],
  hypothesis: Hypothesis,
): number {
  let fromLogs = 1;
  let others = 1;
  for (const { fact, place } of facts) {
    if (!isNear(components, place, hypothesis)) continue;
    const figure = figureIn(table.facts[fact], hypothesis.mode) ?? 1;
    if ((factsFromLogs as readonly string[]).includes(fact)) fromLogs = Math.max(fromLogs, figure);
    else others *= figure;
  }
  return fromLogs * others;
}

/** One way in which a test can have come out as it did: its chance, and how much quiet with the fault there it takes. */
type Way = { chance: number; quiet: number };
type Weighed = { record: TestRecord; effect: Effect; table: FaultTable; rate: FaultRate };

function waysOf({ record, effect, table, rate }: Weighed): Way[] {
  const away = staysAway(effect);
  const provoking = provokingExposure(table, record.test, rate.mode);
  if (provoking !== null && !record.surelyAway && record.putBack === null) {
    const watched = record.exposure > 0 ? record.exposure : provoking;
    const quiet = quietWhileProvoked(effect, quietChance(rate, watched));
    return [{ chance: record.seen ? 1 - quiet : quiet, quiet: 0 }];
  }
  if (record.seen) return [{ chance: 1 - away, quiet: 0 }];
  if (record.surelyAway) return [{ chance: away, quiet: 0 }];
  if (record.putBack === null)
    return [
      { chance: away, quiet: 0 },
      { chance: 1 - away, quiet: record.quiet },
    ];
  const { because, coincidence } = effect;
  const byItself = (1 - because) * coincidence;
  const { returned, quiet } = record.putBack;
  if (returned)
    return [
      { chance: because, quiet: 0 },
      { chance: 1 - because - byItself, quiet: record.quiet },
    ];
  return [
    { chance: because, quiet },
    { chance: byItself, quiet: 0 },
    { chance: 1 - because - byItself, quiet: record.quiet + quiet },
  ];
}

/** More tests than this without the fault in any of them are not expanded over the shared rate, but taken apart. */
const mostShared = 10;

function chanceOfWays(tests: readonly Way[][], rate: FaultRate): number {
  let spread: Way[] = [{ chance: 1, quiet: 0 }];
  let apart = 1;
  let expanded = 0;
  for (const ways of tests) {
    if (ways.length > 1 && expanded >= mostShared)
      apart *= ways.reduce((sum, way) => sum + way.chance * quietChance(rate, way.quiet), 0);
    else {
      spread = spread.flatMap((before) =>
        ways.map((way) => ({ chance: before.chance * way.chance, quiet: before.quiet + way.quiet })),
      );
      if (ways.length > 1) expanded += 1;
    }
  }
  return apart * spread.reduce((sum, way) => sum + way.chance * quietChance(rate, way.quiet), 0);
}

/**
 * A device that drops its own output with its input does so every time, so the same answer again adds only that
 * the one before wasn't misread.
 */
function menuLikelihood(
  model: FaultModel,
  deviceId: string,
  { stayed, vanished }: { stayed: number; vanished: number },
  at: number,
): number {
  const stays = menuStaysIn(model, deviceId)[at] ?? 0;
  const slip = figureIn(model.table.menuStays.misread, 'any') ?? 0;
  const read = (right: number, wrong: number) => (1 - slip) ** right * slip ** wrong;
  const likelihood = stays * read(stayed, vanished) + (1 - stays) * read(vanished, stayed);
  if (stayed > 0) return likelihood;
  const empty = tellsNothingChance(model, deviceId);
  return empty + (1 - empty) * likelihood;
}

function readingLikelihood(
  { table, components }: FaultModel,
  { deviceId, at, says }: Records['readings'][number],
  { component, mode }: Hypothesis,
): number {
  const relation = component === outside ? outside : relationOf(components, deviceKey(deviceId), component);
  const row = table.readings[relation === 'own' ? at : relation];
  const wrong = figureIn(row, mode) ?? 0.5;
  return says === 'wrong' ? wrong : 1 - wrong;
}

function witnessLikelihood(
  { table, components }: FaultModel,
  { deviceId, besideId, shows }: Records['witnesses'][number],
  { component, mode }: Hypothesis,
): number {
  const isDisplay = components.known.get(deviceKey(deviceId))?.device?.role === 'display';
  const along = (id: string): boolean => {
    const relation = component === outside ? outside : relationOf(components, deviceKey(id), component);
    return relation === 'own' || relation === (isDisplay ? 'upstream' : 'downstream');
  };
  const isOnOwn = along(besideId);
  const elsewhere = component === chainKey ? 'whole' : 'apart';
  const row = isOnOwn ? (along(deviceId) ? 'shared' : 'own') : elsewhere;
  const shown = figureIn(table.witnesses[row], mode) ?? 0.5;
  return shows ? shown : 1 - shown;
}

function isNear(components: Components, place: Place, { component }: Hypothesis): boolean {
  const at = componentAt(place);
  return at === component || neighboursOf(components, at).includes(component);
}
