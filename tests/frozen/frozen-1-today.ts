import {
  asToday,
  evolve,
  openingAsToday,
  openTriage,
  type Stored,
  type TriageSnapshot,
} from '../../state-machines/index.ts';
import type { FrozenEvent, FrozenLog } from './frozen-1.ts';

const facts = ['open', 'assign', 'takeOver', 'update'];
export const isForTriage = ({ type }: FrozenEvent): boolean => !facts.includes(type);
export const storedEvent = ({ payload, type, at, actorId, machineVersion }: FrozenEvent): Stored => ({
  version: machineVersion,
  content: { ...payload, type, at, by: actorId },
});
export const storedOpening = ({ opening }: FrozenLog): Stored => ({ version: 1, content: opening });

/** The snapshot of today after every event of a log, as the log is read one event after the other. */
export function* snapshotsToday(log: FrozenLog): Generator<TriageSnapshot> {
  let snapshot = openTriage(openingAsToday(storedOpening(log)));
  for (const event of log.events) {
    if (isForTriage(event)) snapshot = asToday(storedEvent(event), snapshot).reduce(evolve, snapshot);
    yield snapshot;
  }
}
