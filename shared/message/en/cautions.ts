import type { cautionCodes } from '../codes/cautions.ts';
import type { Sentences } from '../sentences.ts';

export const cautionsEn: Sentences<typeof cautionCodes> = {
  cautionOpticalLight: () =>
    'An active optical cable carries laser light that is invisible and can harm the eye: never look into its end or into the socket it was in, don’t open its plugs, don’t bend it tightly.',
  cautionDisplay: () =>
    'A display may hang high and a projector throws strong light: use a ladder that stands safely, with somebody to hold it, and never reach out sideways; stay out of the beam, never look into the lens, and let it cool before working at it.',
  cautionMains: () =>
    'There is mains voltage in racks and devices: switch off and unplug before reaching behind them, open no housing, and leave mains wiring to a licensed electrician.',
  cautionCableInWall: () =>
    'Cables in walls must have the fire rating that local codes ask for; opening walls and fire stops is work for the licensed trades.',
  cautionCableAcrossFloor: () =>
    'A cable across the floor trips people: keep it out of doorways, tape or cover it, tell everybody in the room, and take it up when you leave.',
  cautionConduit: () =>
    'Check what else runs in the conduit and never pull beside mains; the cable’s fire rating has to fit local codes.',
  cautionLifting: () => 'Displays and processors are heavy and tip over: lift with two people.',
  cautionFirmwareUpdate: () =>
    'An update can’t be undone, and a device that loses power in the middle of it may not start again: don’t switch off, and write down all settings first, since an update can reset them.',
};
