import type { LogFinding } from '../contract/log-findings.ts';
import type { Watch } from '../contract/triage.ts';
import { isLoggedOf, isOneInLogs } from './same-occurrence.ts';

/** An occurrence that logs show and nobody has said anything to yet. */
export type OpenProposal = {
  evidenceId: string;
  deviceId: string | null;
  watch: LogFinding['watches'][number];
  seen: LogFinding['watches'][number]['proposed'][number];
  /** Devices whose logs show the same occurrence, later. */
  alsoIn: string[];
};

/**
 * What logs propose, oldest first and each once, however many logs show it.
 *
 * What was answered “no” is not proposed again, whichever log shows it.
 *
 * @param watches of the ticket as it stands, which may know more than the findings: what was recorded since is left out
 */
export function openProposals(logs: readonly LogFinding[], watches: readonly Watch[]): OpenProposal[] {
  const watchById = new Map(watches.map((watch) => [watch.id, watch]));
  const isOpen = (watchId: string, { at, recordedAs }: OpenProposal['seen']): boolean => {
    const watch = watchById.get(watchId);
    // Tries are judged when they are made: what a log shows of them is no occurrence to be confirmed.
    if (watch === undefined || watch.mode === 'trigger' || recordedAs !== null) return false;
    if (watch.loggedAsNone?.some((none) => isLoggedOf(none.at, at)) === true) return false;
    return !watch.occurrences.some((each) => each.withdrawn === null && isLoggedOf(each.at, at));
  };
  const all = logs
    .flatMap(({ evidenceId, deviceId, watches: seenIn }) =>
      seenIn.flatMap((watch) =>
        watch.proposed
          .filter((seen) => isOpen(watch.watchId, seen))
          .map((seen): OpenProposal => ({ evidenceId, deviceId, watch, seen, alsoIn: [] })),
      ),
    )
    .sort((a, b) => Date.parse(a.seen.at) - Date.parse(b.seen.at));
  const once: OpenProposal[] = [];
  for (const each of all) {
    const first = once.find(
      ({ watch, evidenceId, seen }) =>
        watch.watchId === each.watch.watchId &&
        evidenceId !== each.evidenceId &&
        isOneInLogs(seen.at, each.seen.at),
    );
    if (first === undefined) once.push(each);
    else if (each.deviceId !== null && !first.alsoIn.includes(each.deviceId))
      first.alsoIn.push(each.deviceId);
  }
  return once;
}
