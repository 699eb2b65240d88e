import type { BenchRow } from './bench-row.ts';

/** Each prints ratios measured side by side in one run; `npm run bench -- NAME…` runs some of them. */
const benches: Record<string, () => Promise<BenchRow[]>> = {
  edid: async () => (await import('./edid.ts')).benchEdid(),
  budget: async () => (await import('./budget.ts')).benchBudget(),
  phone: async () => (await import('./phone.ts')).benchPhone(),
  logs: async () => (await import('./logs.ts')).benchLogs(),
  isolation: async () => (await import('./isolation.ts')).benchIsolation(),
  plan: async () => (await import('./plan.ts')).benchPlan(),
  retests: async () => (await import('./retests.ts')).benchRetests(),
  worlds: async () => (await import('./worlds/bench.ts')).benchWorlds(),
  walk: async () => (await import('./walk.ts')).benchWalk(),
  cases: async () => (await import('./cases.ts')).benchCases(),
  loop: async () => (await import('./loop/bench.ts')).benchLoop(),
  load: async () => (await import('./load/bench.ts')).benchLoad(),
  screens: async () => (await import('./screens.ts')).benchScreens(),
};

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unknown = asked.filter((name) => benches[name] === undefined);
if (unknown.length > 0) {
  console.error(`There is no benchmark ${unknown.join(', ')}; there are: ${Object.keys(benches).join(', ')}`);
  process.exit(2);
}
for (const [name, bench] of Object.entries(benches)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  console.log(`\n${name}`);
  console.table(await bench());
}
