import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { message } from '../../../shared/message/message.ts';
import {
  EventNotTaken,
  openChange,
  replay,
  runningWatch,
  stateName,
  type TriageEvent,
} from '../../../state-machines/index.ts';
import { type InvariantName, invariants } from '../../../state-machines/triage/invariants.ts';
import { currentWait, standingSides } from '../../../state-machines/triage/record.ts';
import { type RuleName, rules } from '../../../state-machines/triage/rules/index.ts';
import { because } from '../../../state-machines/triage/rules/refusal.ts';
import {
  explore,
  type Graph,
  interrupting,
  isOpen,
  placeOf,
  restingStates,
  takingBack,
  type Visited,
} from './exploration.ts';
import { device, link, opening } from './triage-events.ts';

const bypass = { kind: 'bypassDevice', target: device('receiver') } as const;
const replaceCable = { kind: 'replaceCable', target: link('L3') } as const;
const hotPlug = { kind: 'reissueHotPlug', target: device('receiver') } as const;
const firmware = { kind: 'updateFirmware', target: device('receiver') } as const;

const openChanges = ({ context }: Visited) => context.changes.filter(isOpen);
const isInterrupted = (state: string) => state === 'waiting' || state.startsWith('escalated');
const inSubstitute = (snapshot: Visited) => stateName(snapshot).startsWith('substitute.');

/** What must hold wherever the exploration gets, in words. */
const mustHold: Record<string, (snapshot: Visited) => boolean> = {
  'at most one change is open': (snapshot) => openChanges(snapshot).length <= 1,
  'no diagnostic change is in place where a remedy is settled, verified or closed': (snapshot) =>
    !['remedy', 'verify', 'closed'].includes(stateName(snapshot)) || openChanges(snapshot).length === 0,
  'a change is begun only where a side is known': (snapshot) =>
    stateName(snapshot) !== 'substitute.ready' || standingSides(snapshot.context).length > 0,
  'the state of substitution and of the open change are one': (snapshot) => {
    const status = openChange(snapshot.context)?.status ?? 'ready';
    const inState = {
      ready: 'ready',
      declared: 'declared',
      applied: 'applied',
      retest: 'applied',
      judged: 'judged',
    };
    const [, inner = ''] = stateName(snapshot).split('.');
    return !inSubstitute(snapshot) || inState[inner as keyof typeof inState] === status;
  },
  'a watch runs only where there is something to watch': (snapshot) =>
    runningWatch(snapshot.context) === null ||
    ['reproduce', 'locateSide', 'substitute.ready', 'substitute.retest', 'verify'].includes(
      stateName(snapshot),
    ),
  'a retest is a running watch': (snapshot) =>
    stateName(snapshot) !== 'substitute.retest' || runningWatch(snapshot.context)?.purpose === 'retest',
  'a remedy other than “no fault found” has a culprit': ({ context }) =>
    context.remedy === null || context.remedy.kind === 'noFaultFound' || context.culprit !== null,
  'the way back is kept while second line has the case or the ticket waits, and only then': (snapshot) =>
    isInterrupted(stateName(snapshot)) === (snapshot.context.resumeAt !== null),
  'what is waited for is known while the ticket waits, and only then': (snapshot) =>
    (stateName(snapshot) === 'waiting') === (currentWait(snapshot.context) !== null),
  'a ticket is closed where it says when': (snapshot) =>
    (stateName(snapshot) === 'closed') === (snapshot.context.closedAt !== null),
  'it rests only in states that people know': (snapshot) => restingStates.includes(stateName(snapshot)),
};

const broken = (graph: Graph): string[] => {
  const states = [...graph.values()].map(({ state }) => state);
  return Object.entries(mustHold)
    .filter(([, holds]) => !states.every(holds))
    .map(([name]) => name);
};

/** Names of the states from which no way leads to one that is wanted. */
function deadEnds(graph: Graph, wanted: (snapshot: Visited) => boolean): string[] {
  const comingFrom = new Map<string, string[]>();
  for (const [place, reached] of graph) {
    for (const state of reached.next) {
      const next = placeOf(state);
      comingFrom.set(next, [...(comingFrom.get(next) ?? []), place]);
    }
  }
  const good = new Set([...graph].filter(([, { state }]) => wanted(state)).map(([place]) => place));
  const waiting = [...good];
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    for (const before of comingFrom.get(place) ?? []) {
      if (good.has(before)) continue;
      good.add(before);
      waiting.push(before);
    }
  }
  return [...graph.keys()].filter((place) => !good.has(place));
}

const namesIn = (graph: Graph) =>
  [...new Set([...graph.values()].map(({ state }) => stateName(state)))].sort();
const isClosed = (snapshot: Visited) => stateName(snapshot) === 'closed';

/** An exploration takes some ten seconds of an idle processor. */
const patienceMs = 300_000;

describe('every way through a ticket', () => {
  let graph: Graph;
  beforeAll(() => {
    graph = explore({ changes: [bypass, replaceCable, firmware], without: interrupting });
  }, patienceMs);

  it('gets to every state in which work goes on', () => {
    expect(namesIn(graph)).toEqual(restingStates.filter((name) => !isInterrupted(name)).sort());
    expect(graph.size).toBeGreaterThan(800);
  });

  it('keeps what must hold', () => {
    expect(broken(graph)).toEqual([]);
  });

  it('has a way on to closing from everywhere', () => {
    expect(deadEnds(graph, isClosed)).toEqual([]);
  });

  it('never gets into substitution without a side, whatever the event', () => {
    const steps = [...graph.values()].flatMap(({ state, next }) =>
      next.map((after) => ({ before: state, after })),
    );
    const entries = steps.filter(({ before, after }) => !inSubstitute(before) && inSubstitute(after));
    expect(entries.length).toBeGreaterThan(0);
    expect(entries.filter(({ after }) => standingSides(after.context).length === 0)).toEqual([]);
  });
});

describe('every way through second line and waiting', () => {
  let graph: Graph;
  beforeAll(() => {
    graph = explore({ changes: [bypass], without: takingBack });
  }, patienceMs);

  it('gets to every state', () => {
    expect(namesIn(graph)).toEqual([...restingStates].sort());
  });

  it('keeps what must hold', () => {
    expect(broken(graph)).toEqual([]);
  });

  it('has a way on to closing from everywhere', () => {
    expect(deadEnds(graph, isClosed)).toEqual([]);
  });
});

describe('the shortest way to every place', () => {
  it(
    'is a log that replays to the same snapshot',
    () => {
      const reached = explore({ changes: [bypass, hotPlug], without: interrupting });
      expect(reached.size).toBeGreaterThan(200);
      for (const { state, events } of reached.values()) {
        const log: TriageEvent[] = JSON.parse(JSON.stringify(events));
        expect(replay(opening, log)).toStrictEqual(JSON.parse(JSON.stringify(state)));
      }
    },
    patienceMs,
  );
});

describe('the exploration itself', () => {
  /** Explores with these rules refusing nothing, or everything, and with these invariants taken out. */
  function exploreWith(answer: 'nothing' | 'all', names: RuleName[], out: InvariantName[] = []): Graph {
    const cause = answer === 'nothing' ? null : because('not-allowed-now', message('closedReopenFirst'));
    for (const name of names) {
      vi.spyOn(rules[name], 'ready').mockReturnValue(cause);
      if (name !== 'chooseRemedy') vi.spyOn(rules[name], 'refuse').mockReturnValue(cause);
    }
    for (const name of out) vi.spyOn(invariants, name).mockReturnValue(true);
    return explore({ changes: [bypass], without: [...interrupting, ...takingBack] });
  }
  afterEach(() => vi.restoreAllMocks());

  it('finds two open changes once nothing keeps a second one from being declared', () => {
    const graph = exploreWith('nothing', ['declareChange'], ['noOpenChange', 'noWatchRuns']);
    expect(broken(graph)).toContain('at most one change is open');
  });

  it('meets the invariant where declaring refuses nothing', () => {
    expect(() => exploreWith('nothing', ['declareChange'])).toThrow(EventNotTaken);
  });

  it('finds a remedy over a diagnostic change once culprit and remedy ask for nothing', () => {
    expect(
      broken(exploreWith('nothing', ['nameCulprit', 'chooseRemedy'], ['noOpenChange', 'noWatchRuns'])),
    ).toContain('no diagnostic change is in place where a remedy is settled, verified or closed');
  });

  it('finds dead ends once a change can’t be put back', () => {
    expect(deadEnds(exploreWith('all', ['restoreChange']), isClosed).length).toBeGreaterThan(0);
  });
});
