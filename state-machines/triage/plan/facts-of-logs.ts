import { signalOrder } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { LogEventSeen, LogFinding } from '../../../shared/contract/log-findings.ts';
import type { FactFromLogs, Result } from '../../../shared/isolation/index.ts';
import { isLoggedOf } from '../../../shared/logs/same-occurrence.ts';

type Fact = Extract<Result, { kind: 'fact' }>;

/** Which fact each kind of log event is; kinds that aren't here say nothing about where a fault lies. */
const factByEvent: Readonly<Record<string, FactFromLogs>> = {
  hotPlugDown: 'hotPlugDropped',
  supplyLost: 'hotPlugDropped',
  edidFailed: 'edidReadFailed',
  authenticationFailed: 'authenticationFailed',
  repeaterFailed: 'authenticationFailed',
  linkTrainingFailed: 'linkFellBack',
  linkRateReduced: 'linkFellBack',
  syncLost: 'syncLost',
  restart: 'restarted',
  restartPower: 'restarted',
  restartWatchdog: 'restarted',
  restartCrash: 'restarted',
  restartHeat: 'restarted',
  formatChange: 'formatChanged',
};
/** What comes first at this share of the occurrences that logs cover belongs to the fault; assumed. */
const usualShare = 0.5;
/** Fewer occurrences than this make no habit; assumed. */
const fewestCovered = 2;
/** Clocks of two devices agree to this, so that events closer than that came at once; seconds, assumed. */
const clocksAgreeS = 2;

type Said = { deviceId: string; fact: FactFromLogs; atMs: number };

/**
 * What logs say of where the fault lies. All that the logs of all devices show at one occurrence is one thing that
 * happened: what came first, and of what came at once the furthest upstream, is its root; the rest is what followed.
 * A forerunner that regularly comes before is the root of all of them.
 */
export function factsOfLogs(logs: readonly LogFinding[], chain: Chain): Fact[] {
  const order = signalOrder(chain);
  const known = logs.flatMap((log) =>
    log.deviceId !== null && order.includes(log.deviceId) ? [{ ...log, deviceId: log.deviceId }] : [],
  );
  const upstreamFirst = (a: Said, b: Said) => order.indexOf(a.deviceId) - order.indexOf(b.deviceId);
  const rootOf = (said: readonly Said[]): Said[] => {
    const firstMs = Math.min(...said.map(({ atMs }) => atMs));
    const atOnce = said.filter(({ atMs }) => atMs - firstMs <= clocksAgreeS * 1000);
    return atOnce.sort((a, b) => upstreamFirst(a, b) || a.atMs - b.atMs).slice(0, 1);
  };
  const before = rootOf(known.flatMap(forerunnersIn));
  const roots = before.length > 0 ? before : usual(known, rootOf);
  return roots.map(({ deviceId, fact }) => ({ kind: 'fact', fact, place: { kind: 'device', deviceId } }));
}

type Known = LogFinding & { deviceId: string };

/** As though all had come before one occurrence at 0. */
const forerunnersIn = ({ deviceId, precursors }: Known): Said[] =>
  precursors.flatMap(({ regular, kind, leadS }) => {
    const fact = factByEvent[kind];
    return regular && fact !== undefined ? [{ deviceId, fact, atMs: -(leadS ?? 0) * 1000 }] : [];
  });

/** The roots that at least half of the occurrences share, of those that any log covers. */
function usual(logs: readonly Known[], rootOf: (said: readonly Said[]) => Said[]): Said[] {
  const occurrences = new Map(
    logs.flatMap(({ coverage }) =>
      coverage.occurrences.flatMap(({ occurrenceId, at, status }) =>
        status === 'covered' ? [[occurrenceId, at] as const] : [],
      ),
    ),
  );
  if (occurrences.size < fewestCovered) return [];
  const roots = [...occurrences.values()].flatMap((at) => rootOf(logs.flatMap((log) => saidAt(log, at))));
  const same = (root: Said) => (each: Said) => each.deviceId === root.deviceId && each.fact === root.fact;
  return roots.filter(
    (root, index) =>
      roots.findIndex(same(root)) === index &&
      roots.filter(same(root)).length >= usualShare * occurrences.size,
  );
}

const saidAt = ({ deviceId, events }: Known, recordedAt: string): Said[] =>
  events.filter(({ at }) => isLoggedOf(recordedAt, at)).flatMap((event) => said(deviceId, event));

function said(deviceId: string, { kind, at }: LogEventSeen): Said[] {
  const fact = factByEvent[kind];
  return fact === undefined ? [] : [{ deviceId, fact, atMs: Date.parse(at) }];
}
