import type { Device, Place } from '../../../shared/contract/chain.ts';
import { terms } from '../words/terms.ts';
import type { Box } from './layout.ts';
import type { Mark } from './marks.ts';
import { selectable } from './selectable.ts';
import { Signs } from './sign.tsx';
import { drawingWords } from './words.ts';

/** How many letters of a name fit into a device at 13 px; assumed. */
const longestName = 18;
const cut = (name: string): string =>
  name.length <= longestName ? name : `${name.slice(0, longestName - 1).trimEnd()}…`;

/** A source points to where the signal goes, a display stands on a foot, all others are boxes. */
function Outline({ role, width: w, height: h }: { role: Device['role']; width: number; height: number }) {
  if (role === 'source') return <path d={`M0 0h${w - 16}l16 ${h / 2}l-16 ${h / 2}h${16 - w}z`} />;
  if (role === 'display') return <path d={`M0 0h${w}v${h - 8}h${-w / 2 + 20}v8h-40v-8h${-w / 2 + 20}z`} />;
  return <rect width={w} height={h} rx="6" />;
}

type Properties = {
  box: Box;
  device: Device;
  marks: readonly Mark[];
  isSelected: boolean;
  onSelect: ((place: Place) => void) | undefined;
};
export function DeviceShape({ box, device, marks, isSelected, onSelect }: Properties) {
  const role = terms().role[device.role];
  const said = marks.map((mark) => drawingWords().marks[mark]);
  const label = [device.name, role, ...said].join(', ');
  return (
    <g
      class={['drawing-device', ...marks.map((mark) => `mark-${mark}`)].join(' ')}
      transform={`translate(${box.x - box.width / 2} ${box.y - box.height / 2})`}
    >
      <g
        class="drawing-press"
        {...selectable({ kind: 'device', deviceId: device.id }, label, { isSelected, onSelect })}
      >
        <Outline role={device.role} width={box.width} height={box.height} />
      </g>
      {/* Beside the button, not in it: its label says all of this in full, also where a name is cut. */}
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus */}
      <g aria-hidden="true">
        <text class="drawing-name" x={box.width / 2} y="28">
          {cut(device.name)}
        </text>
        <text class="drawing-role" x={box.width / 2} y="46">
          {role}
        </text>
        <Signs marks={marks} x={box.width - 6} y={4} />
      </g>
    </g>
  );
}
