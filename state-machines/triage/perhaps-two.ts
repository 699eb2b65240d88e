import { namedPlace } from '../../shared/chain/named-place.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import type { TriageRecord } from '../../shared/contract/triage.ts';
import { type Message, message } from '../../shared/message/message.ts';
import { namedChange } from '../../shared/message/named-change.ts';

/**
 * That there are perhaps two faults, after a change that stayed although the fault still came; null where none did.
 * `chance` is 0..1.
 */
export function perhapsTwoFaults(
  { changes }: TriageRecord,
  chain: Chain,
): { chance: number; text: Message } | null {
  const change = changes.findLast(({ oneOfTwo }) => oneOfTwo !== null);
  if (change === undefined || change.oneOfTwo === null) return null;
  const { chance } = change.oneOfTwo;
  const place = namedPlace(chain, change.target);
  return { chance, text: message('perhapsTwoFaults', { chance, change: namedChange(change), place }) };
}
