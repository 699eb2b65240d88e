import { type Message, message } from '../../message/index.ts';
import type { LinkContext } from './rule.ts';

const optical = message('cautionOpticalLight');
const display = message('cautionDisplay');
export const mainsCaution = message('cautionMains');
const wall = message('cautionCableInWall');
const floor = message('cautionCableAcrossFloor');
export const firmwareCaution = message('cautionFirmwareUpdate');

/** A cable longer than this likely leaves the rack; assumed. */
const withinRackM = 3;

/** A cable and what it joins. */
type Cable = Pick<LinkContext, 'link' | 'ends'>;

/** For hands at the plugs of a cable. */
export function pluggingCautions({ link, ends }: Cable): Message[] {
  const inRack = [ends.source, ends.sink].some(({ role }) => role !== 'display' && role !== 'source');
  return [
    ...(link.construction === 'activeOptical' ? [optical] : []),
    ...(ends.sink.role === 'display' ? [display] : []),
    ...(inRack ? [mainsCaution] : []),
  ];
}

/** For a supply plugged in at an end of a cable. */
export function poweringCautions(context: Cable): Message[] {
  return [...new Set([...pluggingCautions(context), mainsCaution])];
}

/** For laying another cable in place of this one; `newOneIsOptical` where the new one is. */
export function replacingCautions(context: Cable, newOneIsOptical = false): Message[] {
  const { link } = context;
  return [
    ...new Set([
      ...(newOneIsOptical ? [optical] : []),
      ...pluggingCautions(context),
      ...(link.route === 'free' ? [] : [wall]),
      ...(link.route === 'free' && link.lengthM > withinRackM ? [floor] : []),
    ]),
  ];
}
