import type { Offer, PlannedTestView, PlanReply } from '../../../shared/contract/plan.ts';
import type { ChangeKind } from '../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import {
  type ChangeOption,
  menuKey,
  type Plan,
  type PlannedTest,
  planNext,
  provingChange,
  testKey,
  testSentences,
} from '../../../shared/isolation/index.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { isSideSettled } from '../record.ts';
import { type Asked, inputOf } from './asked.ts';
import type { Step } from './fill-in.ts';
import { menuPatienceMin } from './menus.ts';
import { offering } from './offer.ts';
import { plannedView } from './planned-view.ts';
import { declareChange, watchAsItComes } from './steps.ts';

/** The tests worth most, the best first, and how to say so. */
export type Tests = { views: PlannedTestView[]; sentences: Message[] };
export const noTests: Tests = { views: [], sentences: [] };

/** What to test next, before anything is said of what the ticket takes now. */
export type Choice = { plan: Plan; tests: Tests };

/** The next tests by expected minutes; where one suspect is left, the one change that proves it. */
export function choiceOf(asked: Asked): Choice {
  const hasSide = isSideSettled(asked.record);
  const plan = planNext({
    ...inputOf(asked, asked.changes),
    // Before a side is known, only a watch with a menu up may come next: the machine proves the side first.
    ...(hasSide ? {} : { byClient: asked.menus.map(menuKey) }),
  });
  return { plan, tests: proofOf(asked, plan) ?? testsOf(asked, plan) };
}

export function testsOf(asked: Asked, { advice }: Plan): Tests {
  if (advice.kind !== 'test') return noTests;
  const [next, ...others] = changesFirst([advice.next, ...advice.others], asked.state);
  return {
    views: [next, ...others].map((each) => plannedView(asked, each)),
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

/** From this chance on, a test that only makes one suspect likelier gives way to the one that proves it; assumed. */
const worthProving = 0.8;

/**
 * A culprit is shown, not reckoned: once one suspect is that likely, the next thing is the one change that takes the
 * fault away if it is that suspect.
 */
function proofOf(asked: Asked, plan: Plan): Tests | null {
  const { record, here, standing, changes, isShown } = asked;
  const [suspect] = plan.suspects;
  if (suspect === undefined || suspect.place === null || !isSideSettled(record) || isShown) return null;
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
  const { views, sentences } = testsOf(asked, planOfOne(asked, change));
  const [next] = views;
  if (next === undefined) return null;
  const { setup, watch, restore } = next.minutes;
  const proving: PlannedTestView = {
    ...next,
    why: message('provesSuspect', { place: suspect.named }),
    expectedMin: setup + watch + restore,
  };
  const others = testsOf(asked, plan).views.filter((other) => other.id !== proving.id);
  return {
    views: [proving, ...others.slice(0, 2)],
    sentences: [
      message('proveByOneChange', { place: suspect.named, probability: suspect.probability }),
      ...sentences,
    ],
  };
}

/** The plan in which this one change comes next, however sure the suspects are already. */
export function planOfOne(asked: Asked, change: ChangeOption): Plan {
  const input = inputOf(asked, [change]);
  const id = testKey(change.kind, change.target, change.own);
  return planNext({ ...input, byClient: [id], terms: { ...input.terms, stopAt: 1 - 1e-9 } });
}

/** The commands that begin a test from where the ticket is; null where it isn't at a point at which one can begin. */
function stepsTo(asked: Asked, { kind, target, ownKindId }: PlannedTestView): Step[] | null {
  const { state, record } = asked;
  if (state !== 'locateSide' && state !== 'substitute.ready') return null;
  if (kind === 'menu') {
    if (target.kind !== 'device') return null;
    const watch = watchAsItComes(asked, menuPatienceMin(record), target.deviceId);
    return state === 'locateSide' ? [watch] : [{ type: 'locateSideAgain' }, watch];
  }
  const declare = declareChange(kind as ChangeKind, target, ownKindId);
  return state === 'locateSide' ? [{ type: 'beginSubstitution' }, declare] : [declare];
}

/** Each test as a way on from where the ticket is. */
export function testOffers(asked: Asked, { views }: Tests): Offer[] {
  return views.flatMap((test) => {
    const { text, why, minutes } = test;
    const steps = stepsTo(asked, test);
    return steps === null ? [] : [offering(steps, { text, why, watchMin: minutes.watch, test })];
  });
}

export const outOfReachOf = ({ outOfReach }: Plan): PlanReply['outOfReach'] =>
  outOfReach === null ? null : { text: outOfReach.text, why: outOfReach.why, savesMin: outOfReach.savesMin };

export function stopOf({ advice, sentence }: Plan): PlanReply['stop'] {
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
