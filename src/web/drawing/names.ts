import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { Box, Layout } from './fit.ts';
import { scaleFor } from './lettering.ts';
import { type Marks, placesByWeight } from './marks.ts';
import { largestScale } from './view.ts';

/** The share of a device's box that its name has, at least: a source's tip and a display's foot take the rest. */
const roomForName = { width: 0.88, height: 0.72 } as const;
const known = new WeakMap<Layout, number>();

/** The scale from which every device's name can be read, in branches too. */
export function namesAt(layout: Layout, chain: Chain): number {
  const found = known.get(layout);
  if (found !== undefined) return found;
  const names = new Map(chain.devices.map(({ id, name }) => [id, name]));
  const scales = boxesOf(layout).map(({ id, width, height }) => {
    const room = { width: width * roomForName.width, height: height * roomForName.height };
    return scaleFor(names.get(id) ?? id, room, largestScale);
  });
  const scale = Math.max(0, ...scales);
  known.set(layout, scale);
  return scale;
}

/** Every device as it is drawn, large and in branches. */
export const boxesOf = ({ devices, branches }: Layout): Box[] => [
  ...devices,
  ...branches.flatMap((branch) => branch.devices),
];

/** Where to look closer first: at what was chosen, else at the heaviest mark; null where there is neither. */
export function whatMatters(
  layout: Layout,
  selected: Place | null,
  marks: Marks,
): { x: number; y: number } | null {
  for (const place of [...(selected === null ? [] : [selected]), ...placesByWeight(marks)]) {
    const line =
      place.kind === 'link' ? layout.lines.find(({ linkIds }) => linkIds.includes(place.linkId)) : undefined;
    const box =
      line?.label ??
      (place.kind === 'device' || place.kind === 'port'
        ? boxesOf(layout).find(({ id }) => id === place.deviceId)
        : undefined);
    if (box !== undefined) return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }
  return null;
}
