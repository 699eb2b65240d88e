import type { cautionCodes } from '../codes/cautions.ts';
import type { Sentences } from '../sentences.ts';

export const cautionsEn: Sentences<typeof cautionCodes> = {
  cautionOpticalLight: () =>
    'The light in an optical cable is invisible and can harm the eye: never look into its end or into the socket it was in.',
  cautionDisplay: () =>
    'A display may hang high and a projector throws strong light: use a secured ladder and a second person, stay out of the beam and never look into the lens.',
  cautionMains: () =>
    'Racks carry mains: leave covers closed, and leave fixed wiring to a licensed electrician.',
  cautionCableInWall: () =>
    'Cable in walls needs the fire rating that local codes ask for; work in walls is for the licensed trade.',
  cautionCableAcrossFloor: () =>
    'A cable across a floor trips people: cover or tape it down, and take it up after the test.',
  cautionFirmwareUpdate: () =>
    "An update can't be undone, and a device that loses power in the middle of it may not start again.",
};
