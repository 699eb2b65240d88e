import { useEffect, useRef } from 'preact/hooks';
import { findDevice, findLink } from '../../../../shared/chain/look-up.ts';
import type { Chain } from '../../../../shared/contract/chain.ts';
import { Button } from '../../parts/button.tsx';
import { type Goal, goalsOf, type Start, wantedDirection, withSocket } from '../../place/connect.ts';
import { placeWord } from '../../place/place-words.ts';
import { plugged, socketWord } from './edit-taps.ts';
import { editWords } from './edit-words.ts';
import type { ChainEdits } from './use-chain-edits.ts';

/** Where something is to be plugged: by a tap on the drawing, or out of this list. */
export function PickPanel({ edits, start }: { edits: ChainEdits; start: Start }) {
  const t = editWords();
  const { chain, at } = edits;
  const list = useRef<HTMLUListElement>(null);
  // For keys: the list has the focus; the drawing stays where it is.
  useEffect(() => {
    list.current?.querySelector('button')?.focus({ preventScroll: true });
  }, [edits.turn]);
  const goals = goalsOf(chain, start).filter(
    (goal) => at === null || (goal.kind === 'socket' && goal.at.deviceId === at),
  );
  const device = at === null ? undefined : findDevice(chain, at);
  return (
    <section class="place-panel" aria-label={t.whereTo}>
      <h3>{device === undefined ? `${subject(chain, start)}: ${t.whereTo}` : t.pickAt(device.name)}</h3>
      <p>
        {device !== undefined && goals.length === 0
          ? t.noSocketAt(device.name)
          : start.kind === 'device'
            ? t.pickCable
            : goals.length === 0
              ? t.noneFree
              : t.pickSocket}
      </p>
      <ul class="plain-list pick-list" ref={list}>
        {goals.map((goal) => (
          <li key={JSON.stringify(goal)}>
            <Button onClick={() => plugged(edits, goal)}>{goalWord(chain, goal)}</Button>
          </li>
        ))}
        {at !== null && <NewSocket edits={edits} start={start} deviceId={at} />}
        <li>
          <Button kind="quiet" onClick={edits.cancel}>
            {t.cancel}
          </Button>
        </li>
      </ul>
    </section>
  );
}

/** A socket that nobody described yet, since that is what the cable is plugged into in the room. */
function NewSocket({ edits, start, deviceId }: { edits: ChainEdits; start: Start; deviceId: string }) {
  const direction = wantedDirection(edits.chain, start);
  const added = direction === null ? null : withSocket(edits.chain, deviceId, direction);
  if (added === null || ownDevice(edits.chain, start) === deviceId) return null;
  return (
    <li>
      <Button onClick={() => plugged(edits, { kind: 'socket', at: added.at, swapsWith: null }, added.chain)}>
        {editWords().newSocket(findDevice(edits.chain, deviceId)?.name ?? deviceId)}
      </Button>
    </li>
  );
}

/** The device at the other end, into which nothing can be plugged. */
function ownDevice(chain: Chain, start: Start): string | undefined {
  if (start.kind === 'device') return start.deviceId;
  if (start.kind === 'socket') return start.at.deviceId;
  return findLink(chain, start.linkId)?.[start.end === 'from' ? 'to' : 'from'].deviceId;
}

function subject(chain: Chain, start: Start): string {
  if (start.kind === 'end') return start.linkId;
  return start.kind === 'socket'
    ? socketWord(chain, start.at)
    : placeWord(chain, { kind: 'device', deviceId: start.deviceId });
}

function goalWord(chain: Chain, goal: Goal): string {
  if (goal.kind === 'cable') return placeWord(chain, { kind: 'link', linkId: goal.linkId });
  const socket = socketWord(chain, goal.at);
  return goal.swapsWith === null ? socket : editWords().swap(socket, goal.swapsWith);
}
