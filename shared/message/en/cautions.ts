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
  cautionFlexByHand: () =>
    'Flex it by hand alone, standing on the floor, where the cable lies free: never from a ladder, never an optical cable, and with no force on plug or socket.',
  cautionMainsOrder: () =>
    'Off for one minute, each by its switch or plug, never at the fuse board. Not while anything updates or records, or while a disc server writes. Let a projector cool down first. Leave alarm, network and medical equipment plugged in.',
  cautionPowerOff: () =>
    'By its own switch or plug, never at the fuse board, and not while it updates, records or writes. Let a projector cool down first. Leave alarm, network and medical equipment plugged in.',
  cautionSupply: () =>
    'Use only a supply that the maker allows: the same voltage, polarity and plug, and at least the same current. Open no housing.',
  cautionHeat: () =>
    'Warm it only by using it as usual: cover no vents, blow no hot air. Surfaces can be hot; leave what smells or discolours switched off.',
  cautionEarth: () =>
    'Protective earth is never lifted, taped off or adapted away, not even for a test. If you feel a tingle or see a spark, stop, touch nothing more, and call a licensed electrician.',
  cautionThunderstorm: () =>
    'Not in a thunderstorm, and leave the earthing of an aerial or dish as it is: it belongs to a licensed electrician.',
  cautionOthersAppliances: () =>
    'Ask before anything is switched off or unplugged: nothing medical, no alarm, no heating, no fridge, nothing that somebody works on.',
  cautionReturnAudio: () =>
    'Sound that comes back over the same cable may go with the control bus: say so, and check the sound afterwards.',
  cautionBeam: () => 'A projector that wakes throws strong light: nobody looks into the lens.',
};
