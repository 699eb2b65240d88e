import { displaysOf, sourcesOf } from '../chain/graph.ts';
import type { Case } from './case.ts';
import { type Components, pathBetween, type Scope } from './components.ts';

/** The scope of a case: ids that are not in the chain are left out, and what isn't known is taken as everything. */
export function scopeOf(components: Components, facts: Case): Scope {
  const sources = sourcesOf(facts.chain).map(({ id }) => id);
  const displays = displaysOf(facts.chain).map(({ id }) => id);
  const orAll = (chosen: readonly string[], all: string[]) => {
    const valid = all.filter((id) => chosen.includes(id));
    return valid.length === 0 ? all : valid;
  };
  const affected = orAll(facts.affectedSources, sources);
  const shown = orAll(facts.affectedDisplays, displays);
  const path = pathBetween(components, affected, shown);
  return { affected, unaffected: sources.filter((id) => !affected.includes(id)), displays: shown, path };
}
