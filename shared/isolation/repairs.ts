import type { Place } from '../contract/chain.ts';
import type { ChangeKind } from '../contract/change.ts';
import type { Message } from '../message/message.ts';
import { type ChangeOption, testOrder } from './candidates.ts';
import { staysOnceCured } from './change-catalogue.ts';
import { effectsOf } from './likelihood.ts';
import { expectedRepairMin, type Repair } from './repair-order.ts';
import type { Standing } from './standing.ts';
import { testKey } from './test-record.ts';

export type PlannedRepair = Repair & { kind: ChangeKind; target: Place; text: Message };
export type RepairPlan = { order: PlannedRepair[]; expectedMin: number; uncured: number };

/** Repairs that hardly cure anything are left out; assumed. */
const worthTrying = 0.01;

/**
 * Repairs to try one after the other where nobody can watch what each does: by probability over minutes (see
 * `orderRepairs`). Two repairs can cure the same fault, so each probability is that of curing what those before it
 * left uncured.
 */
export function repairsOf({ model, chances }: Standing, changes: readonly ChangeOption[]): RepairPlan {
  let left = [...chances];
  let open = changes
    .filter(({ kind, own }) => staysOnceCured({ test: kind, own }))
    .map((change) => ({ change, effects: effectsOf(model, { ...change, test: change.kind }) }));
  const order: PlannedRepair[] = [];
  for (;;) {
    const cures = open.map((each) => ({
      ...each,
      probability: left.reduce((sum, chance, at) => sum + chance * (each.effects.because[at] ?? 0), 0),
    }));
    const next = cures
      .filter(({ probability }) => probability >= worthTrying)
      .sort((a, b) => b.probability / minutesOf(b.change) - a.probability / minutesOf(a.change))[0];
    if (next === undefined) break;
    const { change, effects, probability } = next;
    const text = testOrder(model, { ...change, test: change.kind });
    const id = testKey(change.kind, change.target, change.own);
    order.push({ id, ...change, text, probability, minutes: minutesOf(change) });
    left = left.map((chance, at) => chance * (1 - (effects.because[at] ?? 0)));
    open = open.filter((each) => each.change !== change);
  }
  const uncured = left.reduce((sum, chance) => sum + chance, 0);
  return { order, expectedMin: expectedRepairMin(order), uncured };
}

const minutesOf = ({ setupMin }: ChangeOption): number => Math.max(1, setupMin);
