import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type KitItem, kitKey } from '../../../../shared/isolation/kit.ts';
import { session } from '../../api/session.ts';
import { memberDatabase } from '../../store/member-database.ts';

export type Kit = {
  /** What was ticked as being in the van; null where nobody has said anything yet. */
  readonly ticked: readonly KitItem[] | null;
  /** Whether what is ticked is safe on this device: a tick shows at once, and is kept a moment later. */
  readonly isKept: boolean;
  has(item: KitItem): boolean;
  /** Resolves once it is safe on this device. */
  tick(item: KitItem, isThere: boolean): Promise<void>;
  /** All at once; null: nothing is said any more. */
  setAll(items: readonly KitItem[] | null): Promise<void>;
};

const all = signal<ReadonlyMap<string, readonly KitItem[] | null>>(new Map());
const unkept = signal(0);
let heldFor: string | null = null;
const draftKey = (ticketId: string): string => `kit ${ticketId}`;

/**
 * What is in the van for a ticket, ticked by whoever drives and kept on this device. The visit's list and the plan
 * of the triage read the same; what one of them sets, the other shows at once.
 */
export function useKit(ticketId: string): Kit {
  const memberId = session.value?.member.id ?? null;
  useEffect(() => {
    if (heldFor !== memberId) all.value = new Map();
    heldFor = memberId;
    if (!all.peek().has(ticketId)) void load(ticketId);
  }, [ticketId, memberId]);
  const ticked = all.value.get(ticketId) ?? null;
  const keys = new Set((ticked ?? []).map(kitKey));
  return {
    ticked,
    isKept: unkept.value === 0,
    has: (item) => keys.has(kitKey(item)),
    tick: (item, isThere) => {
      const others = (all.peek().get(ticketId) ?? []).filter((one) => kitKey(one) !== kitKey(item));
      return keep(ticketId, isThere ? [...others, item] : others);
    },
    setAll: (items) => keep(ticketId, items),
  };
}

const hold = (ticketId: string, items: readonly KitItem[] | null): void => {
  all.value = new Map([...all.peek(), [ticketId, items]]);
};

async function load(ticketId: string): Promise<void> {
  const loadedFor = heldFor;
  const kept = await (await memberDatabase())?.get('drafts', draftKey(ticketId));
  // Nothing that was read before the member was known, or for another one, stands for this one's ticks.
  if (heldFor === loadedFor && !all.peek().has(ticketId))
    hold(ticketId, (kept as readonly KitItem[] | null | undefined) ?? null);
}

async function keep(ticketId: string, items: readonly KitItem[] | null): Promise<void> {
  hold(ticketId, items);
  unkept.value++;
  try {
    await (await memberDatabase())?.put('drafts', items, draftKey(ticketId));
  } finally {
    unkept.value--;
  }
}
