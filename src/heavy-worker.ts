import { readLogWork } from './features/evidence/read-log.work.ts';
import { summaryWork } from './features/packets/summary.work.ts';
import { phonePlanWork, planWork, suspectsWork } from './features/planning/plan.work.ts';
import { budgetWork } from './features/signal/budget.work.ts';
import { edidsWork } from './features/signal/edids.work.ts';
import type { HeavyTask, Order } from './heavy-work/task.ts';

/** What runs in a worker thread (src/heavy-work): every task of every feature. */
const tasks = [
  budgetWork,
  edidsWork,
  phonePlanWork,
  planWork,
  readLogWork,
  summaryWork,
  suspectsWork,
] as unknown as HeavyTask<unknown, unknown>[];
const byName = new Map(tasks.map((task) => [task.name, task]));

/** Does a task; input and output are JSON. */
export async function run({ name, input }: Order): Promise<string> {
  const task = byName.get(name);
  if (task === undefined) throw new Error(`No worker knows the task ${name}.`);
  return JSON.stringify(await task.run(JSON.parse(input)));
}
