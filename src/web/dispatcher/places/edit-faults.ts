import { chainFaults } from '../../../../shared/chain/validate.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { fieldFault } from '../../parts/fault-at.ts';
import { placeAtPointer } from '../../place/connect.ts';
import { said } from '../../words/sentence.tsx';

/** Why a chain can't be saved, and what that concerns. */
export type EditFault = { place: Place; text: string };

/** What the chain itself makes impossible, and what the server said besides. */
export function faultsOf(chain: Chain, problem: Problem | null): EditFault[] {
  const own = chainFaults(chain);
  const known = new Set(own.map(({ pointer }) => pointer));
  return [
    ...own.map(({ place, said: message }) => ({ place, text: said(message).text })),
    ...(problem?.errors ?? [])
      .filter(({ pointer }) => !known.has(pointer))
      .map((error) => ({ place: placeAtPointer(chain, error.pointer), text: fieldFault(error) })),
  ];
}
