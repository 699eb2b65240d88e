import { describe, expect, it } from 'vitest';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { Watch } from '../../../shared/contract/triage.ts';
import { faultTable } from '../../../shared/isolation/fault-table.ts';
import { faultModelOf } from '../../../shared/isolation/hypotheses.ts';
import { posteriorOf } from '../../../shared/isolation/posterior.ts';
import { logFindings, openProposals } from '../../../shared/logs/index.ts';
import { factsOfLogs } from '../../../state-machines/index.ts';
import { facts as asked, cinema } from '../../isolation/cinema-case.ts';
import { readText } from '../../logs/read-text.ts';
import { TriageCase } from './triage-case.ts';

const dropOuts = 7;
const watch: Watch = new TriageCase().baseline().watch(60, dropOuts).lastWatch;
const begunMs = Date.parse(watch.startedAt);

/** What a device logs at each drop-out, so many seconds after (or before) the picture goes, a person being 3 s late. */
type Logged = Record<string, readonly (readonly [afterS: number, line: string])[]>;

function logsOf(logged: Logged): LogFinding[] {
  return Object.entries(logged).map(([deviceId, said]) => {
    const alive = Array.from({ length: 400 }, (_, index) => [begunMs + index * 10_000, 'alive'] as const);
    const lines = watch.occurrences.flatMap(({ at }) =>
      said.map(([afterS, line]) => [Date.parse(at) - 3000 + afterS * 1000, line] as const),
    );
    const text = [...alive, ...lines]
      .sort((a, b) => a[0] - b[0])
      .map(([ms, line]) => `${new Date(ms).toISOString()} ${line}`)
      .join('\n');
    return logFindings(
      { evidenceId: `log of ${deviceId}`, deviceId, fileName: null, reading: readText(text) },
      [watch],
    );
  });
}

/** The player loses its output; everything behind it follows. */
const fourLog: Logged = {
  player: [[0, 'tx0: HDCP authentication lost']],
  receiver: [
    [0.3, 'rx1: signal lost'],
    [0.5, 'tx1: HDCP authentication failed'],
  ],
  processor: [
    [0.8, 'rx: sync lost'],
    [1, 'tx: hpd 1->0'],
  ],
  projector: [
    [1.2, 'no signal on input 1'],
    [4, 'link training failed'],
  ],
};

const shareOf = (logs: readonly LogFinding[], ...components: string[]): number => {
  const model = faultModelOf({ ...asked, results: factsOfLogs(logs, cinema) }, faultTable);
  const chances = posteriorOf(model);
  return model.hypotheses.reduce(
    (sum, { component }, index) => sum + (components.includes(component) ? (chances[index] ?? 0) : 0),
    0,
  );
};

describe('what logs of one chain say of where the fault lies', () => {
  it('is what came first, and furthest upstream of what came at once; the rest followed from it', () => {
    expect(factsOfLogs(logsOf(fourLog), cinema)).toEqual([
      { kind: 'fact', fact: 'authenticationFailed', place: { kind: 'device', deviceId: 'player' } },
    ]);
  });

  it('makes the part that is wrong more likely, and none behind it', () => {
    const logs = logsOf(fourLog);
    expect(watch.occurrences).toHaveLength(dropOuts);
    expect(shareOf(logs, 'device:player', 'link:L1')).toBeGreaterThan(
      shareOf([], 'device:player', 'link:L1'),
    );
    expect(shareOf(logs, 'link:L4')).toBeLessThan(shareOf([], 'link:L4'));
  });

  it('is the device whose events come well before, where clocks can tell', () => {
    const logs = logsOf({ ...fourLog, projector: [[-4, 'hdmi in 1: +5V lost']] });
    expect(factsOfLogs(logs, cinema)).toMatchObject([{ place: { deviceId: 'projector' } }]);
  });

  it('is nothing where each drop-out begins elsewhere, or one alone is covered', () => {
    expect(factsOfLogs([], cinema)).toEqual([]);
    const [log] = logsOf({ player: [[0, 'tx0: HDCP authentication lost']] });
    const once = { ...(log as LogFinding), precursors: [] };
    const coverage = { ...once.coverage, occurrences: once.coverage.occurrences.slice(0, 1) };
    expect(factsOfLogs([{ ...once, coverage }], cinema)).toEqual([]);
  });

  it('counts once for a part, however often it is said', () => {
    const result = (fact: 'hotPlugDropped') =>
      ({ kind: 'fact', fact, place: { kind: 'device', deviceId: 'player' } }) as const;
    const chances = (...kinds: Parameters<typeof result>[0][]) =>
      posteriorOf(faultModelOf({ ...asked, results: kinds.map(result) }, faultTable));
    const alone = chances('hotPlugDropped');
    const model = faultModelOf(asked, faultTable);
    const contact = model.hypotheses.findIndex(
      ({ component, mode }) => component === 'link:L1' && mode === 'contact',
    );
    // Whatever is said of the player, its cable's contact is only as suspect as the strongest of it makes it.
    expect(chances('hotPlugDropped', 'hotPlugDropped')[contact]).toBeCloseTo(alone[contact] ?? 0, 12);
  });
});

describe('what logs propose', () => {
  const unseen: Watch = { ...watch, occurrences: [] };
  const findings = logsOf(fourLog).map((log) => ({
    ...log,
    watches: log.watches.map((each) => ({
      ...each,
      proposed: each.proposed.map((proposal) => ({ ...proposal, recordedAs: null })),
    })),
  }));

  it('comes once, whichever logs show it, and names the others', () => {
    const open = openProposals(findings, [unseen]);
    expect(open).toHaveLength(dropOuts);
    expect(open[0]).toMatchObject({ deviceId: 'player', alsoIn: ['receiver', 'processor', 'projector'] });
  });

  it('is left out once it is on record, a person having been some seconds late', () => {
    expect(openProposals(findings, [watch])).toEqual([]);
  });

  it('is left out of tries, which are judged when they are made', () => {
    expect(openProposals(findings, [{ ...unseen, mode: 'trigger' }])).toEqual([]);
  });

  it('is left out once it was answered with a no, in whichever log', () => {
    const open = openProposals(findings, [unseen]);
    const none = open.map(({ seen, evidenceId }) => ({ at: seen.at, evidenceId, by: unseen.by }));
    expect(openProposals(findings, [{ ...unseen, loggedAsNone: none }])).toEqual([]);
  });
});
