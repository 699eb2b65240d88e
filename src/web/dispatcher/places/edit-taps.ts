import { findDevice, findPort } from '../../../../shared/chain/look-up.ts';
import type { Chain, DeviceRole, Place, PortRef } from '../../../../shared/contract/chain.ts';
import { type Goal, goalsOf, ownerOf, type Start } from '../../place/connect.ts';
import { deviceWord } from '../../place/place-words.ts';
import { terms } from '../../words/terms.ts';
import { editWords } from './edit-words.ts';
import type { ChainEdits } from './use-chain-edits.ts';

/** A socket with its device, as on a screen. */
export const socketWord = (chain: Chain, at: PortRef): string =>
  `${deviceWord(chain, at.deviceId)} ${findPort(chain, at)?.label ?? at.portId}`;

/** What the next device of a kind is called until it has a name. */
export function nameOfNew(chain: Chain, role: DeviceRole): string {
  const same = chain.devices.filter((device) => device.role === role).length;
  return terms().role[role] + (same === 0 ? '' : ` ${same + 1}`);
}

/** Something on the drawing was tapped: it opens, or what is being plugged goes there. */
export function tapped(edits: ChainEdits, place: Place): void {
  const { chain, start } = edits;
  if (start === null) {
    edits.select(place);
    return;
  }
  const at = ownerOf(place);
  const there = goalsOf(chain, start).filter((goal) =>
    goal.kind === 'cable'
      ? at.kind === 'link' && at.linkId === goal.linkId
      : at.kind === 'device' && at.deviceId === goal.at.deviceId,
  );
  // A swap is asked for by name: nobody pulls another cable by a tap.
  const [only, ...others] = there.filter((goal) => goal.kind === 'cable' || goal.swapsWith === null);
  if (only !== undefined && others.length === 0) plugged(edits, only);
  else if (at.kind === 'device' && start.kind !== 'device') edits.narrow(at.deviceId);
}

/** Plugs it, and says what was done. */
export function plugged(edits: ChainEdits, goal: Goal, from?: Chain): void {
  const { start } = edits;
  if (start === null) return;
  edits.plug(goal, (chain) => doneWord(chain, start, goal), from);
}

function doneWord(chain: Chain, start: Start, goal: Goal): string {
  const t = editWords();
  if (goal.kind === 'cable')
    return start.kind === 'device'
      ? t.into(findDevice(chain, start.deviceId)?.name ?? start.deviceId, goal.linkId)
      : '';
  const link = start.kind === 'end' ? chain.links.find(({ id }) => id === start.linkId) : chain.links.at(-1);
  return link === undefined ? '' : t.moved(link.id, socketWord(chain, link.from), socketWord(chain, link.to));
}
