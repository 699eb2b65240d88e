import type { Offer, PhonePlanReply, PlannedTestView, PlanReply } from '../../../shared/contract/plan.ts';
import { type ClientReach, planRemotely, suspectsOf } from '../../../shared/isolation/index.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import type { TriageSnapshot } from '../evolve.ts';
import { once } from '../once.ts';
import { perhapsTwoFaults } from '../perhaps-two.ts';
import { openChange } from '../record.ts';
import { acceptedOf } from './accepted.ts';
import { type Asked, askedOf, inputOf, type PlanRequest } from './asked.ts';
import { likelyFirst } from './likely.ts';
import { overDaysOf } from './over-days.ts';
import { stageOf } from './stages/index.ts';
import { type Choice, choiceOf, outOfReachOf, stopOf, testsOf } from './tests.ts';

/**
 * What to do next on a ticket and why: the ways on, each of which the ticket takes as it stands, the advised one first;
 * and every suspect with what speaks for and against it. Pure: the server and, offline, the phone say the same.
 */
export const planTicket = (snapshot: TriageSnapshot, request: PlanRequest): PlanReply =>
  planAsked(snapshot, askedOf(snapshot, request));

/** The same with the changes that come first in a list of all, by their keys; see `likelyFirst`. */
export function planWithLikely(
  snapshot: TriageSnapshot,
  request: PlanRequest,
): { plan: PlanReply; likely: string[] } {
  const asked = askedOf(snapshot, request);
  return { plan: planAsked(snapshot, asked), likely: likelyFirst(asked.standing, asked.changes) };
}

function planAsked(snapshot: TriageSnapshot, asked: Asked): PlanReply {
  const { record, state, known, now } = asked;
  const choice = once(() => choiceOf(asked));
  const { sentence, offers: wanted, stop, ways } = stageOf(asked, choice);
  const offers = acceptedOf(snapshot, wanted, {
    known,
    ownChanges: asked.ownChanges ?? [],
    now,
    role: 'technician',
  });
  const looksOn = !isSettled(asked) && openChange(record) === null;
  // Where the client chooses the way on, none of the tests is worth its time.
  const tests = looksOn && ways.length === 0 ? testsShown(asked, offers, choice()) : [];
  const [next = null, ...others] = tests;
  const cutShort = looksOn ? choice().plan.cutShort : null;
  return {
    state,
    sentence: withCutShort(sentence, cutShort),
    offers,
    watchMin: offers[0]?.watchMin ?? null,
    next,
    others,
    outOfReach: looksOn ? outOfReachOf(choice().plan) : null,
    stop,
    suspects: suspectsOf(asked.standing.model),
    twoFaults: perhapsTwoFaults(asked.record, asked.known.chain),
    overDays: overDaysOf(asked),
    cutShort,
    ways,
  };
}

/** Whatever the stage, whoever reads the advice is told that not everything was weighed for it. */
const withCutShort = (sentence: Message, cutShort: PlanReply['cutShort']): Message =>
  cutShort === null
    ? sentence
    : message('sentences', { sentences: [sentence, message('planCutShort', cutShort)] });

/** The tests that can begin now; before the fault is reproduced, the first ones are shown ahead of their time. */
const testsShown = ({ state }: Asked, offers: readonly Offer[], { tests }: Choice): PlannedTestView[] =>
  isEarly(state) ? tests.views : offers.flatMap(({ test }) => (test === null ? [] : [test]));

const isEarly = (state: string): boolean => state === 'baseline' || state === 'reproduce';

/** Once a culprit is named, while second line has the case or the ticket waits, no test is looked for. */
const isSettled = ({ state }: Asked): boolean =>
  ['culpritFound', 'remedy', 'verify', 'closed', 'escalated', 'waiting'].includes(state.split('.')[0] ?? '');

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
  const { plan, visitChance, visitFirst, kit } = planRemotely(inputOf(asked, asked.changes), reach);
  const [next = null, ...others] = testsOf({ ...asked, state: 'onThePhone' }, plan).views;
  return {
    state: asked.state,
    sentence: withCutShort(plan.sentence, plan.cutShort),
    offers: [],
    watchMin: null,
    next,
    others,
    outOfReach: null,
    stop: stopOf(plan),
    suspects: suspectsOf(asked.standing.model),
    twoFaults: perhapsTwoFaults(asked.record, asked.known.chain),
    overDays: overDaysOf(asked),
    cutShort: plan.cutShort,
    ways: [],
    visitChance,
    visitFirst,
    van: kit,
  };
}
