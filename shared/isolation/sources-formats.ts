import type { Place } from '../contract/chain.ts';
import { askedRuns } from '../signal/link-budget/index.ts';
import type { Components, Scope } from './components.ts';

/**
 * What another source sends beside those that the fault shows with: as much, less, or nobody said. A fault that needs a
 * format stays away with a source that doesn't send it, wherever it lies.
 */
export type SendsBeside = 'asMuch' | 'less' | 'notKnown';

const asked = new WeakMap<Components, ReturnType<typeof askedRuns>>();

function askedOf(components: Components): ReturnType<typeof askedRuns> {
  const found = asked.get(components) ?? askedRuns(components.chain);
  asked.set(components, found);
  return found;
}

/**
 * By the formats that are wanted of the sources of a chain. Sockets that could pass a format don't say that it is sent:
 * only a format that names its sources says so.
 */
export function sendsBeside(components: Components, { affected }: Scope, other: Place): SendsBeside {
  if (other.kind !== 'device') return 'notKnown';
  // the usual source's place is taken by one that somebody brought
  if (affected.length === 1 && affected.includes(other.deviceId)) return 'notKnown';
  const ofAffected = askedOf(components).filter(({ sourceIds }) => affected.some((id) => sourceIds.has(id)));
  if (ofAffected.length === 0) return 'notKnown';
  if (ofAffected.some(({ sourceIds }) => !sourceIds.has(other.deviceId))) return 'less';
  return ofAffected.every(({ format }) => format.sourceIds?.includes(other.deviceId) ?? false)
    ? 'asMuch'
    : 'notKnown';
}
