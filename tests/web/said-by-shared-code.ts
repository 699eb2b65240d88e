import { fullAudit } from '../../shared/audit/full-audit.ts';
import { displaysOf } from '../../shared/chain/graph.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import type { PlanReply } from '../../shared/contract/plan.ts';
import type { Symptom } from '../../shared/contract/triage.ts';
import {
  type Case,
  kitText,
  type Plan,
  type PlanInput,
  planNext,
  type Result,
  repairsOf,
  standingOf,
  suspectsOf,
} from '../../shared/isolation/index.ts';
import { cablesBehindVersionMessage, chainProtection } from '../../shared/signal/content-protection/index.ts';
import { chainBudget } from '../../shared/signal/link-budget/index.ts';
import { powerBudget } from '../../shared/signal/power.ts';
import { caseOn } from '../bench/isolation-cases.ts';
import { changesOn } from '../bench/isolation-chains.ts';
import { randomFrom } from '../bench/isolation-world.ts';
import { chainsToSpeakOf, minimumFirmware } from './bad-chains.ts';

/** All that is said of a chain on paper: its audit, before and during triage, and what is computed of it. */
export function saidOfChains(): Set<string> {
  return new Set(chainsToSpeakOf().flatMap(saidOfChain));
}

function saidOfChain(chain: Chain): string[] {
  const [display] = displaysOf(chain);
  const symptom: Symptom['kind'] = 'noPicture';
  const purposes = [
    { duringTriage: true, symptom },
    { duringTriage: true, symptom, ...(display === undefined ? {} : { displayId: display.id }) },
  ];
  const findings = purposes.flatMap((purpose) => fullAudit(chain, purpose, {}, minimumFirmware));
  const budget = chainBudget(chain, []);
  return [
    ...findings.flatMap(({ text, whatToDo, caution, placeName, source }) => [
      text,
      whatToDo,
      placeName,
      source,
      ...(caution === null ? [] : [caution]),
    ]),
    ...budget.wanted.map(({ sentence }) => sentence),
    ...budget.links.flatMap(({ name, wanted, elements }) => [
      name,
      ...wanted.map(({ sentence }) => sentence),
      ...elements.flatMap(({ doubts }) => doubts),
    ]),
    ...powerBudget(chain).map(({ sentence }) => sentence),
    ...(['type0', 'type1'] as const).flatMap((demand) => {
      const { hops, displays, topology } = chainProtection(chain, demand);
      return [...hops, ...displays, ...topology].map(({ sentence }) => sentence);
    }),
    ...displaysOf(chain).flatMap(({ id }) =>
      cablesBehindVersionMessage(chain, id).map(({ sentence }) => sentence),
    ),
  ];
}

type Suspects = PlanReply['suspects'] | ReturnType<typeof suspectsOf>;
export const saidOfSuspects = (suspects: Suspects): string[] =>
  suspects.flatMap(({ name, modes, because }) => [
    name,
    ...modes.map((mode) => mode.name),
    ...because.map(({ text }) => text),
  ]);

function saidOfPlan({ sentence, advice, outOfReach, baselineAdvice, suspects }: Plan): string[] {
  const tests = advice.kind === 'test' ? [advice.next, ...advice.others] : [];
  const repairs = advice.kind === 'escalate' ? advice.repairs.order : [];
  return [
    sentence,
    ...suspects.map(({ name }) => name),
    ...tests.flatMap(({ text, why, outcomes, candidate }) => [
      text,
      why,
      outcomes.first.name,
      outcomes.second.name,
      ...candidate.kit.map(kitText),
    ]),
    ...repairs.map(({ text }) => text),
    ...(outOfReach === null ? [] : [outOfReach.text, outOfReach.why, ...outOfReach.kit.map(kitText)]),
    ...(baselineAdvice === null ? [] : [baselineAdvice]),
  ];
}

/** What is at hand: everything, next to nothing, and somebody whose client has objections. */
const circumstances: PlanInput['here'][] = [
  { kit: null, people: 2, refused: [] },
  { kit: [{ kind: 'cable', category: 'highSpeed', lengthM: 1 }], people: 1, refused: [] },
  { kit: [], people: 1, refused: [{ test: 'menu' }, { test: 'reseat' }] },
];

/** Follows plans to their ends, with answers drawn from the seed. @param most steps of each */
export function saidOnTheWay(chain: Chain, seed: number, most: number): Set<string> {
  const random = randomFrom(seed + 1000);
  const here = circumstances[seed % circumstances.length] ?? circumstances[0];
  if (here === undefined) throw new Error('no circumstances');
  const drawn = caseOn(chain, seed);
  const facts: Case = {
    ...drawn,
    // The bench's findings have no text, as those of an audit have.
    findings: drawn.findings.map((finding) => ({ ...finding, text: 'Turn it round.' })),
    moment: (['notKnown', 'anyTime', 'atSwitching', 'whenWarm'] as const)[seed % 4] ?? 'notKnown',
    content: (['notKnown', 'any', 'highRateOnly', 'protectedOnly'] as const)[(seed >> 2) % 4] ?? 'notKnown',
    workedBefore: [null, true, false][seed % 3] ?? null,
  };
  const said = new Set<string>();
  const results: Result[] = [];
  const changes = changesOn(chain);
  for (let step = 0; step < most; step += 1) {
    const known = { ...facts, results };
    const last = results.at(-1);
    const inPlace = last?.kind === 'test' && step % 3 === 2 ? { kind: last.test, target: last.target } : null;
    const plan = planNext({ facts: known, changes, here, inPlace });
    const standing = standingOf(known);
    for (const text of [
      ...saidOfPlan(plan),
      ...saidOfSuspects(suspectsOf(standing.model)),
      ...repairsOf(standing, changes).order.map(({ text: repair }) => repair),
    ])
      said.add(text);
    if (plan.advice.kind !== 'test') break;
    results.push(resultOf(plan.advice.next.candidate.action, random));
  }
  return said;
}

function resultOf(
  action: Extract<Plan['advice'], { kind: 'test' }>['next']['candidate']['action'],
  random: () => number,
): Result {
  const isQuiet = random() < 0.4;
  if (action.kind === 'menu')
    return { kind: 'menu', deviceId: action.deviceId, answer: isQuiet ? 'stayed' : 'vanished' };
  const { test, target } = action;
  const [kind] = (['test', 'test', 'putBack', 'outcome'] as const).slice(Math.floor(random() * 4));
  if (kind === 'outcome') return { kind, test, target, outcome: isQuiet ? 'cleared' : 'persists' };
  const watch =
    random() < 0.5
      ? ({ mode: 'time', minutes: isQuiet ? 120 : 7.5, occurrences: isQuiet ? 0 : 2 } as const)
      : ({ mode: 'trigger', tries: isQuiet ? 12 : 1, failures: isQuiet ? 0 : 1 } as const);
  return { kind: kind ?? 'test', test, target, watch };
}
