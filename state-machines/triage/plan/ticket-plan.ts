import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { PhonePlanReply, PlannedTestView, PlanReply } from '../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import {
  type Case,
  type ChangeOption,
  type Circumstances,
  type ClientReach,
  type FaultTable,
  menuKey,
  type Plan,
  type PlanInput,
  type PlannedTest,
  planNext,
  planRemotely,
  provingChange,
  type Standing,
  standingOf,
  suspectsOf,
  testKey,
  testSentences,
} from '../../../shared/isolation/index.ts';
import { menuStaysChance } from '../../../shared/isolation/likelihood.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { type ApplicableChange, applicableChangesOf, conceivableChangesOf } from '../changes/applicable.ts';
import { stateName, type TriageSnapshot } from '../evolve.ts';
import { changeInPlace, changesOfRound, openChange, standingSides } from '../record.ts';
import { whyNoProof } from '../rules/culprit.ts';
import { menuDevicesLeft } from '../segment.ts';
import { caseOf } from './case-of.ts';
import type { Known } from './known.ts';
import { type Beginning, plannedView } from './planned-view.ts';
import { stepOf } from './step.ts';
import { step } from './step-form.ts';

export type PlanRequest = {
  known: Known;
  here: Circumstances;
  /** The organisation's figures; the built-in ones when left out. */
  table?: FaultTable;
  /** UTC, ISO 8601. */
  now: string;
};

/** A request with what every part of its answer is made from, reckoned once. */
type Asked = PlanRequest & {
  record: TriageRecord;
  state: string;
  facts: Case;
  standing: Standing;
  /** With a side, what applies now; before that, what could come to apply. */
  changes: readonly ApplicableChange[];
  /** A change of this round has shown a culprit. */
  isShown: boolean;
};

function askedOf(snapshot: TriageSnapshot, request: PlanRequest): Asked {
  const record = snapshot.context;
  const { known, table } = request;
  const facts = caseOf(record, known);
  const hasSide = standingSides(record).length > 0 && record.asFound !== null;
  return {
    ...request,
    record,
    state: stateName(snapshot),
    facts,
    standing: standingOf(facts, table),
    changes: hasSide ? applicableChangesOf(record, table) : conceivableChangesOf(record, known.chain, table),
    isShown: changesOfRound(record).some((change) => whyNoProof(change) === null),
  };
}

/**
 * What to do next on a ticket and why: the step its state asks for, or the next test with two more; and every suspect
 * with what speaks for and against it. Pure: the server and, offline, the phone say the same.
 */
export function planTicket(snapshot: TriageSnapshot, request: PlanRequest): PlanReply {
  const asked = askedOf(snapshot, request);
  const { record, state, known, now } = asked;
  const plan = planNext({
    ...inputOf(asked, asked.changes),
    ...(standingSides(record).length > 0 ? {} : { byClient: menusOf(known) }),
  });
  const due = stepOf(record, state, known, now);
  const settled = isSettled(record, state);
  const tests =
    settled || (due !== null && !isEarly(state)) ? noTests : (proofOf(asked, plan) ?? testsOf(asked, plan));
  const asks = due ?? (tests.next === null ? sideStep(asked, plan) : null);
  return {
    state,
    sentence: asks?.sentence ?? (tests.next === null ? plan.sentence : inOrder(tests.sentences)),
    commands: asks?.commands ?? commandsOf(asked, plan, tests.next),
    watchMin: asks?.watchMin ?? null,
    next: tests.next,
    others: tests.others,
    outOfReach: settled ? null : outOfReachOf(plan),
    stop: asks === null && tests.next === null ? stopOf(plan) : null,
    suspects: suspectsOf(asked.standing.model),
  };
}

/**
 * What can be done before anybody drives: the next thing the client can safely do, how likely a visit is, and what to
 * pack for it.
 *
 * @param reach what the client gets at
 */
export function planByPhone(
  snapshot: TriageSnapshot,
  request: PlanRequest,
  reach: ClientReach,
): PhonePlanReply {
  const asked = askedOf(snapshot, request);
  const { plan, visitChance, kit } = planRemotely(inputOf(asked, asked.changes), reach);
  const tests = testsOf({ ...asked, state: 'onThePhone' }, plan);
  return {
    state: asked.state,
    sentence: plan.sentence,
    commands: [],
    watchMin: null,
    next: tests.next,
    others: tests.others,
    outOfReach: null,
    stop: stopOf(plan),
    suspects: suspectsOf(asked.standing.model),
    visitChance,
    van: kit,
  };
}

/** Before the fault is reproduced, the first test is shown ahead of its time. */
const isEarly = (state: string): boolean => state === 'baseline' || state === 'reproduce';

/** While a change is open, and once a culprit is named, no test is looked for. */
const isSettled = (record: TriageRecord, state: string): boolean =>
  openChange(record) !== null ||
  ['culpritFound', 'remedy', 'verify', 'closed'].includes(state.split('.')[0] ?? '');

function inputOf({ record, facts, here, table }: Asked, changes: readonly ChangeOption[]): PlanInput {
  const change = changeInPlace(record);
  return {
    facts,
    changes,
    here,
    menus: menuDevicesLeft(facts.chain, standingSides(record)),
    inPlace: change === null ? null : { kind: change.kind, target: change.target },
    terms: { risk: record.settings.risk },
    ...(table === undefined ? {} : { table }),
  };
}

/** Before a side is known, only a watch with a menu up may come next: the machine proves the side first. */
const menusOf = ({ chain }: Known): string[] => menuDevicesLeft(chain, []).map(menuKey);

type Tests = { next: PlannedTestView | null; others: PlannedTestView[]; sentences: Message[] };
const noTests: Tests = { next: null, others: [], sentences: [] };

function testsOf({ state, changes }: Asked, { advice }: Plan): Tests {
  if (advice.kind !== 'test') return noTests;
  const [next, ...others] = changesFirst([advice.next, ...advice.others], state);
  const context = { changes, beginning: beginningIn(state) };
  return {
    next: plannedView(next, context),
    others: others.map((each) => plannedView(each, context)),
    sentences: testSentences(next),
  };
}

/** Going back to the menus has to be worth more minutes than this; assumed. */
const worthGoingBackMin = 5;

/** In substitution a menu means going back to finding the side, so an equally good change comes before it. */
function changesFirst(
  tests: readonly [PlannedTest, ...PlannedTest[]],
  state: string,
): [PlannedTest, ...PlannedTest[]] {
  const [best, ...others] = tests;
  const change = others.find(
    ({ candidate, expectedMin }) =>
      candidate.action.kind === 'test' && expectedMin <= best.expectedMin + worthGoingBackMin,
  );
  if (state !== 'substitute.ready' || best.candidate.action.kind === 'test' || change === undefined) {
    return [best, ...others];
  }
  return [change, best, ...others.filter((each) => each !== change)];
}

function beginningIn(state: string): Beginning {
  if (state === 'locateSide') return 'locateSide';
  return state === 'substitute.ready' ? 'substitute' : 'later';
}

/** From this chance on, a test that only makes one suspect likelier gives way to the one that proves it; assumed. */
const worthProving = 0.8;

/**
 * A culprit is shown, not reckoned: once one suspect is that likely, the next thing is the one change that takes the
 * fault away if it is that suspect.
 */
function proofOf(asked: Asked, plan: Plan): Tests | null {
  const { record, here, standing, changes, isShown } = asked;
  const [suspect] = plan.suspects;
  if (suspect === undefined || suspect.place === null || standingSides(record).length === 0 || isShown)
    return null;
  const { advice } = plan;
  const onlyMakesSurer =
    advice.kind === 'test' &&
    suspect.probability >= worthProving &&
    advice.next.outcomes.first.component === suspect.component &&
    advice.next.outcomes.second.component === suspect.component;
  if (advice.kind !== 'culprit' && !onlyMakesSurer) return null;
  const untried = changes.filter(({ kind, tried }) => !tried && changeCatalogue[kind].showsCulprit);
  const change = provingChange(standing, suspect.component, untried, here);
  if (change === null) return null;
  const input = inputOf(asked, [change]);
  const id = testKey(change.kind, change.target);
  const proof = planNext({ ...input, byClient: [id], terms: { ...input.terms, stopAt: 1 - 1e-9 } });
  const tests = testsOf(asked, proof);
  if (tests.next === null) return null;
  const { setup, watch, restore } = tests.next.minutes;
  const proving: PlannedTestView = {
    ...tests.next,
    why: message('provesSuspect', { place: suspect.named }),
    expectedMin: setup + watch + restore,
  };
  const others = testsOf(asked, plan);
  return {
    next: proving,
    others: [...(others.next === null ? [] : [others.next]), ...others.others]
      .filter(({ id: other }) => other !== proving.id)
      .slice(0, 2),
    sentences: [
      message('proveByOneChange', { place: suspect.named, probability: suspect.probability }),
      ...tests.sentences,
    ],
  };
}

/** The side has to be proven even where the ranking sees no use in it: no change is made before. */
function sideStep({ record, known: { chain }, standing }: Asked, plan: Plan): ReturnType<typeof stepOf> {
  if (standingSides(record).length > 0) return null;
  const { model, chances } = standing;
  const unevenness = (deviceId: string): number => {
    const stays = model.hypotheses.map(
      (each, at) => (chances[at] ?? 0) * menuStaysChance(model, deviceId, each),
    );
    return Math.abs(stays.reduce((sum, chance) => sum + chance, 0) - 0.5);
  };
  const [menuId] = menuDevicesLeft(chain, []).toSorted((a, b) => unevenness(a) - unevenness(b));
  if (menuId === undefined) {
    return step(inOrder([...saidOf(plan), message('noMenuToProveSide')]), ['escalate']);
  }
  const place = namedPlace(chain, { kind: 'device', deviceId: menuId });
  return step(inOrder([...saidOf(plan), message('proveSideFirst', { place })]), ['startWatch']);
}

const saidOf = ({ advice }: Plan): Message[] =>
  advice.kind === 'culprit' ? [message('byAllThatIsKnown', { place: advice.named })] : [];

const inOrder = (sentences: Message[]): Message => message('sentences', { sentences });

function commandsOf({ isShown }: Asked, { advice }: Plan, next: PlannedTestView | null): TicketCommandType[] {
  if (next !== null) return next.command === null ? [] : [next.command.type as TicketCommandType];
  if (advice.kind !== 'culprit') return ['escalate'];
  return isShown ? ['nameCulprit'] : ['declareChange'];
}

const outOfReachOf = ({ outOfReach }: Plan): PlanReply['outOfReach'] =>
  outOfReach === null ? null : { text: outOfReach.text, why: outOfReach.why, savesMin: outOfReach.savesMin };

function stopOf({ advice, sentence }: Plan): PlanReply['stop'] {
  if (advice.kind === 'test') return null;
  const repairs = advice.kind === 'escalate' ? advice.repairs.order : [];
  return {
    kind: advice.kind,
    text: sentence,
    place: advice.kind === 'culprit' ? advice.place : null,
    repairs: repairs.map(({ kind, target, text, probability, minutes }) => ({
      kind,
      target,
      text,
      probability,
      minutes,
    })),
  };
}
