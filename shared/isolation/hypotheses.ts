import { type Message, message } from '../message/message.ts';
import type { Case, ChangedInput, FindingInput } from './case.ts';
import {
  type ComponentKey,
  type Components,
  chainKey,
  componentAt,
  componentsIn,
  deviceKey,
  linkKey,
  linkMeant,
  neighboursOf,
  pathBetween,
  type Scope,
} from './components.ts';
import { chainModes, type FailureMode, modesOfConstruction, modesOfRole, outside } from './failure-modes.ts';
import type { FaultTable } from './fault-table.ts';
import { figureIn, type Row } from './figures.ts';
import { modesOfRule } from './finding-modes.ts';
import { onlyWithSaid, patternSaid } from './pattern.ts';
import { scopeOf } from './scope.ts';

/** One way in which the fault can have come about: a component and how it fails; `outside` has no component. */
export type Hypothesis = { component: ComponentKey | typeof outside; mode: FailureMode };

/** One thing that is known before any test, and what it multiplies the weight of each hypothesis by. */
export type PriorStep = { text: Message; factors: readonly number[] };

/** The fault model of one case: what can be wrong, and how likely it is before the first test. */
export type FaultModel = {
  facts: Case;
  table: FaultTable;
  components: Components;
  scope: Scope;
  hypotheses: readonly Hypothesis[];
  /** Of each component, where its hypotheses stand among all. */
  hypothesesAt: ReadonlyMap<Hypothesis['component'], readonly number[]>;
  /** Weights without anything known of this case; the steps multiply them. */
  weights: readonly number[];
  steps: readonly PriorStep[];
  /** Chances after all steps; they add up to 1. */
  prior: readonly number[];
};

/** Builds the fault model of a case. Exactly one hypothesis is taken to hold: faults that come in pairs are outside. */
export function faultModelOf(facts: Case, table: FaultTable): FaultModel {
  const components = componentsIn(facts.chain);
  const scope = scopeOf(components, facts);
  const inChain = [...components.keys, chainKey].flatMap((key) =>
    modesAt(components, key).map((mode): Hypothesis => ({ component: key, mode })),
  );
  const own = inChain.map((each) => baseWeight(components, table, each));
  const share = figureIn(table.weighing.outsideShare, 'share') ?? 0;
  const total = own.reduce((sum, weight) => sum + weight, 0);
  const hypotheses = [...inChain, { component: outside, mode: outside } as const];
  const weights = [...own, total > 0 ? (total * share) / (1 - share) : 1];
  const hypothesesAt = placesIn(hypotheses);
  const context = { facts, table, components, scope, hypotheses, hypothesesAt };
  const steps = stepsOf(context);
  const weighed = weights.map((weight, at) =>
    steps.reduce((product, step) => product * (step.factors[at] ?? 1), weight),
  );
  return {
    ...context,
    weights,
    steps,
    prior: normalised(weighed),
  };
}

function placesIn(hypotheses: readonly Hypothesis[]): FaultModel['hypothesesAt'] {
  const places = new Map<string, number[]>();
  for (const [at, { component }] of hypotheses.entries()) {
    const known = places.get(component);
    if (known === undefined) places.set(component, [at]);
    else known.push(at);
  }
  return places;
}

export function normalised(weights: readonly number[]): number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function modesAt(components: Components, key: ComponentKey): readonly FailureMode[] {
  if (key === chainKey) return chainModes;
  const { device = null, link = null } = components.known.get(key) ?? {};
  if (link !== null) return modesOfConstruction(link.construction);
  if (device === null) return [];
  const modes = modesOfRole(device.role);
  return device.processesPicture ? [...modes, 'processing'] : modes;
}

function baseWeight(components: Components, table: FaultTable, { component, mode }: Hypothesis): number {
  const { device = null, link = null } = components.known.get(component) ?? {};
  const { chainWeights, deviceWeights, linkWeights } = table;
  const rows: Partial<Record<FailureMode, Row>> =
    component === chainKey ? chainWeights : link === null ? deviceWeights : linkWeights;
  return figureIn(rows[mode], link?.construction ?? device?.role ?? 'each') ?? 0;
}

type Context = Pick<FaultModel, 'facts' | 'table' | 'components' | 'scope' | 'hypotheses' | 'hypothesesAt'>;
type Factor = (hypothesis: Hypothesis) => number;

function stepsOf(context: Context): PriorStep[] {
  const { facts, table, hypotheses } = context;
  const steps: PriorStep[] = [];
  const add = (text: Message, factor: Factor) => steps.push({ text, factors: hypotheses.map(factor) });
  const chances = (text: Message, rows: FaultTable['symptomChances'], column: string) =>
    add(text, ({ mode }) => figureIn(rows[mode], column) ?? 0);
  add(message('onTheWayOrBeside'), beside(context));
  add(message('knownOfCable'), cableFactor(context));
  steps.push(...findingSteps(context));
  for (const changed of facts.whatChanged)
    add(message('changedBefore', { what: changed.kind }), changedFactor(context, changed));
  if (facts.workedBefore !== null) {
    const row = table.historyFactors[facts.workedBefore ? 'workedBefore' : 'neverWorked'];
    const text = message(facts.workedBefore ? 'workedBefore' : 'neverWorked');
    add(text, ({ mode }) => figureIn(row, mode) ?? 1);
  }
  const { kind } = facts.symptom;
  chances(message('symptomIs', { symptom: kind }), table.symptomChances, kind);
  if (context.scope.affected.length + context.scope.unaffected.length > 1 && facts.affectedSources.length > 0)
    add(message('whichSourcesShowIt'), sourcesChance(context));
  if (facts.content !== 'notKnown')
    chances(contentMessages[facts.content], table.contentChances, facts.content);
  for (const { text, factor } of patternSteps(context)) add(text, factor);
  return steps;
}

/** What is told of how the fault comes: its pattern, what triggers it, and what it shows with and not without. */
function patternSteps({ facts, table }: Context): { text: Message; factor: Factor }[] {
  const { pattern, onlyWith } = facts.symptom;
  const steps: { text: Message; factor: Factor }[] = [];
  if (pattern.kind !== 'notKnown')
    steps.push({
      text: patternSaid(pattern),
      factor: ({ mode }) =>
        (figureIn(table.patternChances[mode], pattern.kind) ?? 0) *
        (pattern.kind === 'trigger' ? (figureIn(table.triggerChances[mode], pattern.trigger) ?? 0) : 1),
    });
  if (onlyWith !== null && onlyWith.kind !== 'source') {
    const row = table.onlyWithFactors[onlyWith.kind];
    steps.push({ text: onlyWithSaid(onlyWith), factor: ({ mode }) => figureIn(row, mode) ?? 1 });
  }
  return steps;
}

function beside({ table, scope }: Context): Factor {
  return ({ component, mode }) =>
    component === outside || component === chainKey || scope.path.has(component)
      ? 1
      : (figureIn(table.weighing.besideThePath, mode) ?? 1);
}

function cableFactor({ facts, table, components }: Context): Factor {
  const headroom = new Map(facts.headroom.map((each) => [linkKey(each.linkId), each.headroomFraction]));
  const yearly = figureIn(table.weighing.age, 'contactPerYear') ?? 0;
  const highest = figureIn(table.weighing.age, 'highest') ?? 1;
  return ({ component, mode }) => {
    const { link = null, device = null } = components.known.get(component) ?? {};
    if (mode === 'fiveVolt' && device !== null && feedsActiveCable(components, component))
      return figureIn(table.weighing.activeCableOnSource, mode) ?? 1;
    if (link === null) return 1;
    if (mode === 'coupling') return figureIn(table.weighing.coupler, link.route) ?? 1;
    const left = headroom.get(component);
    if (mode === 'bandwidth' && left !== undefined)
      return figureIn(table.weighing.headroom, headroomColumn(left)) ?? 1;
    if (mode === 'contact' && link.installedOn !== null && facts.today !== null)
      return Math.min(highest, 1 + yearly * yearsBetween(link.installedOn, facts.today));
    return 1;
  };
}

function feedsActiveCable(components: Components, source: ComponentKey): boolean {
  return neighboursOf(components, source).some(
    (key) => components.known.get(key)?.link?.construction !== 'passiveCopper',
  );
}

function headroomColumn(fraction: number): string {
  if (fraction < 0) return 'short';
  if (fraction < 0.1) return 'under10';
  if (fraction < 0.3) return 'under30';
  return fraction < 1 ? 'under100' : 'ample';
}

function yearsBetween(from: string, to: string): number {
  const years = (Date.parse(to) - Date.parse(from)) / (365.25 * 24 * 3600 * 1000);
  return Number.isFinite(years) ? Math.max(0, years) : 0;
}

/**
 * Several findings on one part, and a budget that is short there, mostly say the same thing in other words: of all
 * that speaks for one way of failing at one place, only the strongest counts.
 */
function findingSteps(context: Context): PriorStep[] {
  const { facts, hypotheses, hypothesesAt } = context;
  const cable = cableFactor(context);
  const strongest = hypotheses.map((each) => Math.max(1, each.mode === 'bandwidth' ? cable(each) : 1));
  return facts.findings.map((finding) => {
    const { near, factor } = findingFactor(context, finding);
    const factors = hypotheses.map(() => 1);
    for (const at of [...new Set(near)].flatMap((key) => hypothesesAt.get(key) ?? [])) {
      const [size, toldBefore] = [factor(hypotheses[at] ?? nowhere), strongest[at] ?? 1];
      strongest[at] = Math.max(toldBefore, size);
      factors[at] = Math.max(1, size / toldBefore);
    }
    return { text: message('auditSays', { finding: finding.text }), factors };
  });
}
const nowhere: Hypothesis = { component: outside, mode: outside };

/** What a finding multiplies hypotheses by, and the components beyond which that is 1. */
function findingFactor(
  { table, components }: Context,
  finding: FindingInput,
): { near: ComponentKey[]; factor: Factor } {
  const size = figureIn(table.weighing.finding, finding.severity) ?? 1;
  const modes = modesOfRule(finding.rule);
  const own = componentAt(finding.place);
  const link = linkMeant(components.chain, finding.place);
  const cable = link === null ? own : linkKey(link.id);
  const feeder = link === null ? own : deviceKey(link.from.deviceId);
  const factor: Factor = ({ component, mode }) => {
    if (modes === null) return component === own ? size : 1;
    const isNear = component === own || component === cable || (mode === 'fiveVolt' && component === feeder);
    return isNear && modes.includes(mode) ? size : 1;
  };
  return { near: [own, cable, feeder], factor };
}

function changedFactor({ table, components }: Context, changed: ChangedInput): Factor {
  const row = table.changedFactors[changed.kind];
  const at = changed.place === undefined ? null : componentAt(changed.place);
  const near = at === null ? null : new Set([at, ...neighboursOf(components, at)]);
  return ({ component, mode }) => (near === null || near.has(component) ? (figureIn(row, mode) ?? 1) : 1);
}

/** Modes that show with one format and not with another. */
const byRate: readonly FailureMode[] = ['bandwidth', 'portMode', 'linkPower', 'edid'];

function sourcesChance({ table, components, scope }: Context): Factor {
  const affected = scope.affected.map((id) => pathBetween(components, [id], scope.displays));
  const unaffected = pathBetween(components, scope.unaffected, scope.displays);
  return ({ component, mode }) => {
    const on = affected.filter((way) => way.has(component)).length;
    const column = (): string => {
      if (component === outside || component === chainKey) return 'unaffectedToo';
      if (on === 0) return 'none';
      if (on < affected.length) return 'someAffected';
      if (!unaffected.has(component)) return 'allAffectedOnly';
      return byRate.includes(mode) ? 'unaffectedTooByRate' : 'unaffectedToo';
    };
    return figureIn(table.weighing.sources, column()) ?? 1;
  };
}

const contentMessages: Record<Exclude<Case['content'], 'notKnown'>, Message> = {
  any: message('showsWithAnyContent'),
  highRateOnly: message('showsAboveSomeFormat'),
  protectedOnly: message('showsWithProtectedContent'),
};
