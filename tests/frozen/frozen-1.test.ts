import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { describe, expect, it } from 'vitest';
import { type FrozenLog, frozenStateName, readAllFrozenLogs, readFrozenCoverage } from './frozen-1.ts';

const logs = readAllFrozenLogs();
const coverage = readFrozenCoverage();
const facts = ['open', 'assign', 'takeOver', 'update'];

/** How often each name comes. */
function counted(names: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const name of names) counts[name] = (counts[name] ?? 0) + 1;
  return counts;
}

const stepsOf = ({ events, snapshots }: FrozenLog): string[] =>
  events.flatMap(({ type }, at) => {
    const [before, after] = [snapshots[at - 1], snapshots[at]];
    if (before === undefined || after === undefined || facts.includes(type)) return [];
    return [`${frozenStateName(before)} ${type} ${frozenStateName(after)}`];
  });

type Judged = {
  changes: {
    id: string;
    kind: string;
    status: string;
    judgement: {
      computed: string;
      verdict: string;
      override: object | null;
      attributable: boolean;
      warnings: string[];
    } | null;
  }[];
  watches: {
    purpose: string;
    changeId: string | null;
    mode: string;
    endedAt: string | null;
    occurrences: { withdrawn: object | null }[];
  }[];
  escalations: { outcome: { kind: string } | null }[];
  setAside: { because: string }[];
  round: number;
  asFound: { chain: { devices: object[] } } | null;
};
const recordAt = ({ snapshots }: FrozenLog, at: number): Judged =>
  snapshots.at(at)?.context as unknown as Judged;

const judgementsOf = (log: FrozenLog): string[] =>
  log.events.flatMap(({ type }, at) => {
    if (type !== 'judgeRetest') return [];
    const { changes, watches } = recordAt(log, at);
    const change = changes.find(({ status }) => status === 'judged');
    const retests = watches.filter(
      ({ purpose, changeId, endedAt }) => purpose === 'retest' && changeId === change?.id && endedAt !== null,
    );
    const modes = [...new Set(retests.map(({ mode }) => mode))].sort().join('+');
    const judgement = change?.judgement;
    return [`${judgement?.computed} ${modes} ${judgement?.override === null ? 'none' : judgement?.verdict}`];
  });

describe('the logs of version 1', () => {
  it('have hashes that anybody can compute: SHA-256 over RFC 8785, each naming the one before', () => {
    for (const { name, opening, events } of logs) {
      let previousHash = '0'.repeat(64);
      for (const [at, { hash, ...entry }] of events.entries()) {
        const text = canonicalize({ ...entry, ticketId: opening.ticketId }) ?? '';
        expect(createHash('sha256').update(text).digest('hex'), `${name} ${at + 1}`).toBe(hash);
        expect(entry.previousHash).toBe(previousHash);
        expect(entry.sequence).toBe(at + 1);
        previousHash = hash;
      }
    }
  });

  it('have a snapshot after every event, and begin with the opening', () => {
    for (const { name, opening, events, snapshots } of logs) {
      expect(snapshots.length, name).toBe(events.length);
      expect(events[0], name).toMatchObject({ type: 'open', at: opening.at, actorId: opening.by });
      expect(snapshots[0]?.context.ticketId).toBe(opening.ticketId);
      expect(new Set(snapshots.map(({ machineVersion }) => machineVersion))).toEqual(new Set([1]));
    }
    expect(new Set(logs.map(({ name }) => name)).size).toBe(logs.length);
  });
});

describe('the table of what they hold', () => {
  const last = logs.map((log) => recordAt(log, -1));
  const changes = last.flatMap((record) => record.changes);

  it('counts what is there', () => {
    const events = logs.flatMap((log) => log.events);
    const text = (value: unknown): string => (typeof value === 'string' ? value : '');
    expect(coverage).toMatchObject({
      machineVersion: 1,
      logs: logs.length,
      events: events.length,
      states: counted(logs.flatMap(({ snapshots }) => snapshots.map(frozenStateName))),
      eventTypes: counted(events.map(({ type }) => type)),
      roles: counted(events.flatMap(({ payload }) => ('role' in payload ? [text(payload.role)] : []))),
      happenedEarlier: events.filter(({ payload, at }) => {
        const happenedAt = text(payload.happenedAt);
        return happenedAt !== '' && happenedAt < at;
      }).length,
      changeKinds: counted(changes.map(({ kind, status }) => `${kind} ${status}`)),
      escalationOutcomes: counted(
        last.flatMap(({ escalations }) => escalations.map(({ outcome }) => outcome?.kind ?? 'none')),
      ),
      setAside: counted(last.flatMap(({ setAside }) => setAside.map(({ because }) => because))),
      rounds: counted(last.map(({ round }) => String(round))),
      devicesInChain: counted(
        last.flatMap(({ asFound }) => (asFound === null ? [] : [String(asFound.chain.devices.length)])),
      ),
      notAttributable: changes.filter(({ judgement }) => judgement?.attributable === false).length,
      withWarnings: changes.filter(({ judgement }) => (judgement?.warnings.length ?? 0) > 0).length,
      withdrawnOccurrences: last
        .flatMap(({ watches }) => watches.flatMap(({ occurrences }) => occurrences))
        .filter(({ withdrawn }) => withdrawn !== null).length,
    });
  });

  it('has every step of every state, and no step that it lists as never accepted', () => {
    const steps = coverage.steps.map(({ state, type, next, times }) => [`${state} ${type} ${next}`, times]);
    expect(counted(logs.flatMap(stepsOf))).toEqual(Object.fromEntries(steps));
    const taken = new Set(coverage.steps.map(({ state, type, rule }) => `${state} ${type} ${rule}`));
    expect(coverage.never.filter(({ state, type, rule }) => taken.has(`${state} ${type} ${rule}`))).toEqual(
      [],
    );
    // Of the 194 pairs of a state and a rule that the machine of version 1 lists.
    expect([taken.size, coverage.never.length]).toEqual([181, 13]);
  });

  it('has every verdict in either mode with every override', () => {
    const cells = coverage.judgements.map(({ computed, mode, override, times }) => [
      `${computed} ${mode} ${override}`,
      times,
    ]);
    expect(counted(logs.flatMap(judgementsOf))).toEqual(Object.fromEntries(cells));
    const verdicts = ['cleared', 'persists', 'inconclusive'];
    for (const computed of verdicts) {
      for (const mode of ['time', 'trigger']) {
        for (const override of ['none', ...verdicts]) {
          expect(Object.fromEntries(cells)).toHaveProperty([`${computed} ${mode} ${override}`]);
        }
      }
    }
  });

  it('has the outcomes, kinds of change and rounds that later versions have to read', () => {
    expect(Object.keys(coverage.states)).toHaveLength(15);
    expect(Object.keys(coverage.escalationOutcomes)).toEqual(
      expect.arrayContaining(['accepted', 'handedBack', 'recalled', 'resubmitted', 'stepDirected']),
    );
    expect(new Set(Object.keys(coverage.changeKinds).map((each) => each.split(' ')[0])).size).toBe(18);
    expect(Math.max(...Object.keys(coverage.rounds).map(Number))).toBeGreaterThan(2);
    expect(Math.max(...Object.keys(coverage.devicesInChain).map(Number))).toBeGreaterThanOrEqual(10);
    expect(coverage.notAttributable * coverage.withWarnings * coverage.withdrawnOccurrences).toBeGreaterThan(
      0,
    );
  });
});
