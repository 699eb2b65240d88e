import type { Device, Place } from '../../../shared/contract/chain.ts';
import { terms } from '../words/terms.ts';
import type { Box } from './fit.ts';
import type { Words } from './lettering.ts';
import type { Sign } from './marks.ts';
import { selectable } from './selectable.ts';
import { ChanceBar, Signs, saidOf } from './sign.tsx';
import { WrittenWords } from './written-words.tsx';

/** A source points to where the signal goes, a display stands on a foot, all others are boxes. */
function Outline({ role, box: { x, y, width: w, height: h } }: { role: Device['role']; box: Box }) {
  const [tip, foot] = [h / 5, h / 9];
  if (role === 'source')
    return <path d={`M${x} ${y}h${w - tip}l${tip} ${h / 2}l${-tip} ${h / 2}h${tip - w}z`} />;
  if (role === 'display') {
    const side = (w - 4 * foot) / 2;
    return <path d={`M${x} ${y}h${w}v${h - foot}h${-side}v${foot}h${-4 * foot}v${-foot}h${-side}z`} />;
  }
  return <rect x={x} y={y} width={w} height={h} rx={h / 12} />;
}

/** Signs stand in a strip along a card's upper edge, in units of the drawing. */
const stripHeight = 20;

/** Where words fit into an outline: beside a source's tip, above a display's foot, below its signs. */
function roomIn(role: Device['role'], { x, y, width, height }: Box, isMarked: boolean): Omit<Box, 'id'> {
  const [side, top] = [height / 16, isMarked ? stripHeight + 4 : height / 24];
  return {
    x: x + side,
    y: y + top,
    width: width - 2 * side - (role === 'source' ? height / 6 : 0),
    height: height - top - (role === 'display' ? height / 7 : height / 24),
  };
}

type Properties = {
  box: Box;
  device: Device;
  detail: number;
  signs: readonly Sign[];
  /** In a branch it is drawn small: its name, once there is room for it, and out of the keyboard's way until then. */
  isSmall: boolean;
  isSelected: boolean;
  onSelect: ((place: Place) => void) | undefined;
};
export function DeviceShape({ box, device, detail, signs, isSmall, isSelected, onSelect }: Properties) {
  const role = terms().role[device.role];
  const label = [device.name, role, ...saidOf(signs)].join(', ');
  const name: Words = { text: device.name, isBold: true };
  const more = [role, device.model, device.serial, device.firmware];
  const words = isSmall ? [name] : [name, ...more.flatMap((text) => (text === null ? [] : [{ text }]))];
  return (
    <g
      class={['drawing-device', isSmall && 'is-small', ...signs.map(({ mark }) => `mark-${mark}`)]
        .filter(Boolean)
        .join(' ')}
    >
      <g
        class="drawing-press"
        {...selectable({ kind: 'device', deviceId: device.id }, label, { isSelected, onSelect })}
      >
        <Outline role={device.role} box={box} />
      </g>
      {/* Beside the button, not in it: its label says all of this in full, also where there is no room for it. */}
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus */}
      <g aria-hidden="true">
        <WrittenWords
          words={words}
          box={roomIn(device.role, box, !isSmall && signs.length > 0)}
          detail={detail}
        />
        {!isSmall && <ChanceBar signs={signs} box={box} />}
        {!isSmall && (
          <Signs signs={signs} box={{ ...box, y: box.y + 3, width: box.width - 8, height: stripHeight }} />
        )}
      </g>
    </g>
  );
}
