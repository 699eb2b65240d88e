import type { Link, Place } from '../../../shared/contract/chain.ts';
import { terms } from '../words/terms.ts';
import { number } from '../words/times.ts';
import type { Line } from './fit.ts';
import { signsHeight, wordsHeight } from './fit.ts';
import { type WrittenLine, written } from './lettering.ts';
import type { Sign } from './marks.ts';
import { selectable } from './selectable.ts';
import { ChanceBar, Signs, saidOf } from './sign.tsx';
import { Lines } from './written-words.tsx';

const pointsOf = ({ points }: Line): string => points.map(({ x, y }) => `${x},${y}`).join(' ');

type Properties = {
  line: Line;
  link: Link;
  /** Both sockets as they are called. */
  sockets: string;
  label: string;
  detail: number;
  signs: readonly Sign[];
  isSelected: boolean;
  onSelect: ((place: Place) => void) | undefined;
};
/** A cable, with what it is at its middle and a wide invisible band around it for fingers. */
export function LinkShape({ line, link, sockets, label, detail, signs, isSelected, onSelect }: Properties) {
  const points = pointsOf(line);
  const { label: room } = line;
  const words = { ...room, height: Math.min(room.height, wordsHeight) };
  const lines = cableWords(link, sockets, words, detail);
  return (
    <g class={['drawing-link', ...signs.map(({ mark }) => `mark-${mark}`)].join(' ')}>
      <g
        class="drawing-press"
        {...selectable({ kind: 'link', linkId: link.id }, [label, ...saidOf(signs)].join(', '), {
          isSelected,
          onSelect,
        })}
      >
        <polyline class="drawing-reach" points={points} />
        <rect class="drawing-reach" x={room.x} y={room.y} width={room.width} height={room.height} />
        <polyline class="drawing-wire" points={points} />
      </g>
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus */}
      <g aria-hidden="true" class="drawing-label">
        <Ground lines={lines} room={words} detail={detail} />
        <Lines lines={lines} box={words} detail={detail} />
        {signs.length > 0 && <ChanceBar signs={signs} box={room} />}
        <Signs signs={signs} box={{ ...room, y: room.y + wordsHeight, height: signsHeight }} />
      </g>
    </g>
  );
}

/** Its label and length as soon as there is room, its sockets and make later. */
function cableWords(link: Link, sockets: string, { width, height }: Line['label'], detail: number) {
  const first = { text: `${link.id} · ${number(link.lengthM, 1)} m`, isBold: true };
  const more = [{ text: sockets }, { text: terms().construction[link.construction] }];
  const found = written([first, ...more], width * detail, height * detail);
  return found.length > 0
    ? found
    : written([{ text: link.id, isBold: true }], width * detail, height * detail);
}

/** Keeps the wire from striking through what is written. */
function Ground({
  lines,
  room,
  detail,
}: {
  lines: readonly WrittenLine[];
  room: Line['label'];
  detail: number;
}) {
  if (lines.length === 0) return null;
  const width = Math.min(room.width, Math.max(...lines.map((line) => line.width)) / detail + 6);
  const [first, last] = [lines[0], lines.at(-1)];
  const top = room.y + ((first?.y ?? 0) - (first?.size ?? 0)) / detail;
  const bottom = room.y + ((last?.y ?? 0) + 0.3 * (last?.size ?? 0)) / detail;
  return (
    <rect
      class="drawing-ground"
      x={room.x + (room.width - width) / 2}
      y={top}
      width={width}
      height={Math.max(0, bottom - top)}
      rx="3"
    />
  );
}

/** Cables to or from a branch: one line, and how many they are. */
export function BundleShape({ line, detail }: { line: Line; detail: number }) {
  const { label: room, linkIds } = line;
  const lines = written(
    [{ text: `× ${linkIds.length}`, isBold: true }],
    room.width * detail,
    room.height * detail,
  );
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus
    <g class="drawing-bundle" aria-hidden="true">
      <polyline class="drawing-wire" points={pointsOf(line)} />
      <g class="drawing-label">
        <Ground lines={lines} room={room} detail={detail} />
        <Lines lines={lines} box={room} detail={detail} />
      </g>
    </g>
  );
}
