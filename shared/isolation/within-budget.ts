import type { Candidate } from './candidates.ts';
import { type ComponentKey, componentAt, deviceKey, linkKey } from './components.ts';
import type { FaultModel } from './hypotheses.ts';
import { byComponent } from './posterior.ts';
import type { Standing } from './standing.ts';
import { unitsPerAsk } from './work.ts';

/** However little work is allowed, so many are looked at. */
const fewest = 12;
/** The share of what is looked at that menus may take: one of them halves the chain, which no change does; assumed. */
const menuShare = 1 / 3;

export type WithinBudget = {
  candidates: readonly Candidate[];
  /** Candidates that were left out. */
  left: number;
};

/**
 * The candidates that a plan has the time to weigh: all of them, or else the menus that part what is believed most
 * evenly, and the tests of what is suspected most. Deterministic.
 */
export function withinBudget(
  model: FaultModel,
  chances: readonly number[],
  { candidates, work }: { candidates: readonly Candidate[]; work: number },
): WithinBudget {
  const most = Math.max(fewest, Math.floor(work / Math.max(1, model.hypotheses.length)));
  if (candidates.length <= most) return { candidates, left: 0 };
  const suspicion = suspicionIn(model, chances);
  const menus = candidates.filter(({ action }) => action.kind === 'menu');
  const tests = candidates.filter(({ action }) => action.kind === 'test');
  const fewMenus = best(menus, Math.ceil(most * menuShare), (each) => -suspicion.unevenness(each));
  const fewTests = best(tests, most - fewMenus.length, (each) => suspicion.at(each));
  const kept = new Set([...fewMenus, ...fewTests]);
  return {
    candidates: candidates.filter((each) => kept.has(each)),
    left: candidates.length - kept.size,
  };
}

/** The parts of a chain that it is asked of which changes apply there; `parts` is null where that is all of them. */
export type PartsAsked = { parts: ReadonlySet<ComponentKey> | null; asked: number; unasked: number };

/**
 * The devices and links that there is the time to ask about: those that are suspected most, which lie on the way of the
 * fault, with what is joined to them. Deterministic.
 *
 * @param asksAt how many kinds of change are to be asked for there, a device's with those of its ports
 * @param work units that asking may take
 */
export function partsWithin(
  { model, chances }: Standing,
  { asksAt, work }: { asksAt: (part: ComponentKey) => number; work: number },
): PartsAsked {
  const { keys } = model.components;
  const all = keys.reduce((sum, key) => sum + asksAt(key), 0);
  const most = work / unitsPerAsk;
  if (all <= most) return { parts: null, asked: all, unasked: 0 };
  const { near } = suspicionIn(model, chances);
  const parts = new Set<ComponentKey>();
  let asked = 0;
  for (const key of best(keys, keys.length, (each) => near(each))) {
    if (asked + asksAt(key) > most) break;
    asked += asksAt(key);
    parts.add(key);
  }
  return { parts, asked, unasked: all - asked };
}

const best = <Each>(of: readonly Each[], most: number, worth: (each: Each) => number): Each[] =>
  of
    .map((each) => ({ each, worth: worth(each) }))
    .sort((a, b) => b.worth - a.worth)
    .slice(0, most)
    .map(({ each }) => each);

/** How much a neighbour of what is suspected counts: many a change does something to both ends of it; assumed. */
const neighbourShare = 0.5;

/** How much the place of a test is suspected, with what it is joined to; and how unevenly a menu parts what is believed. */
function suspicionIn(model: FaultModel, chances: readonly number[]) {
  const { chain, keys } = model.components;
  const sums = byComponent(model, chances);
  const chanceOf = (key: ComponentKey): number => sums.get(key) ?? 0;
  const near = new Map<ComponentKey, number>(sums);
  const add = (key: ComponentKey, chance: number) => near.set(key, (near.get(key) ?? 0) + chance);
  for (const { id, from, to } of chain.links)
    for (const end of [deviceKey(from.deviceId), deviceKey(to.deviceId)]) {
      add(end, neighbourShare * chanceOf(linkKey(id)));
      add(linkKey(id), neighbourShare * chanceOf(end));
    }
  const before = new Map<ComponentKey, number>();
  keys.reduce((sum, key) => {
    before.set(key, sum);
    return sum + chanceOf(key);
  }, 0);
  return {
    near: (key: ComponentKey): number => near.get(key) ?? 0,
    at: ({ action }: Candidate): number =>
      action.kind === 'test' ? (near.get(componentAt(action.target)) ?? 0) : 0,
    unevenness: ({ action }: Candidate): number =>
      action.kind === 'menu' ? Math.abs((before.get(deviceKey(action.deviceId)) ?? 0) - 0.5) : 1,
  };
}
