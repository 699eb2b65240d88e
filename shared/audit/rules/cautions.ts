import type { LinkContext } from './rule.ts';

const optical =
  'The light in an optical cable is invisible and can harm the eye: never look into its end or into the socket it was in.';
const display =
  'A display may hang high and a projector throws strong light: use a secured ladder and a second person, stay out of the beam and never look into the lens.';
export const mainsCaution =
  'Racks carry mains: leave covers closed, and leave fixed wiring to a licensed electrician.';
const wall =
  'Cable in walls needs the fire rating that local codes ask for; work in walls is for the licensed trade.';
const floor = 'A cable across a floor trips people: cover or tape it down, and take it up after the test.';
export const firmwareCaution =
  "An update can't be undone, and a device that loses power in the middle of it may not start again.";

/** A cable longer than this likely leaves the rack; assumed. */
const withinRackM = 3;

/** A cable and what it joins. */
type Cable = Pick<LinkContext, 'link' | 'ends'>;

/** For hands at the plugs of a cable. */
export function pluggingCautions({ link, ends }: Cable): string[] {
  const inRack = [ends.source, ends.sink].some(({ role }) => role !== 'display' && role !== 'source');
  return [
    ...(link.construction === 'activeOptical' ? [optical] : []),
    ...(ends.sink.role === 'display' ? [display] : []),
    ...(inRack ? [mainsCaution] : []),
  ];
}

/** For a supply plugged in at an end of a cable. */
export function poweringCautions(context: Cable): string[] {
  return [...new Set([...pluggingCautions(context), mainsCaution])];
}

/** For laying another cable in place of this one; `optical` where the new one is. */
export function replacingCautions(context: Cable, newOneIsOptical = false): string[] {
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
