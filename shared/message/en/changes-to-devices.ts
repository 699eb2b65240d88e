import type { ChangeWords } from './change-words.ts';

export const changesToDevices = {
  otherSource: {
    label: 'Play another source in its place',
    order: (place) => `Play ${place} instead`,
    instructions:
      'Leave every cable as it is and play this source with content of the same kind and format as the one that shows the fault. Where it is the source that shows it itself, put one you brought in its place, into the same port.',
    afterwards:
      'Choose the usual source again; where one was brought, plug the old one back into the same port.',
  },
  sourceIntoProcessor: {
    label: 'Plug the source straight into the processor',
    order: (place) => `Plug straight into the processor: ${place}`,
    instructions:
      'Take everything between this source and the processor out of the way: one cable from the source to a processor input, and that input chosen. Sound may be missing meanwhile.',
    afterwards: 'Plug the source back where it was and choose the old input again.',
  },
  bypassDevice: {
    label: 'Bypass the device',
    order: (place) => `Bypass ${place}`,
    instructions:
      'Join what feeds the device straight to what follows it. Extenders come in pairs: take both ends out.',
    afterwards: 'Put the device back between the same two ports.',
  },
  disableProcessing: {
    label: 'Switch off processing and EDID management',
    order: (place) => `Switch off processing and EDID management of ${place}`,
    instructions:
      'Switch off scaling, conversion, picture processing and EDID management in this device, so that it passes on what it gets. Declare each setting, and read the settings out before and after.',
    afterwards: 'Leave it off if the fault is gone; otherwise set everything as it was.',
  },
  limitInputBandwidth: {
    label: 'Limit the advertised input bandwidth to 9 Gbit/s',
    order: (place) => `Limit to 9 Gbit/s the input of ${place}`,
    instructions:
      'Set the input’s advertised bandwidth to 9 Gbit/s, then restart this device and the source so that the source reads it anew. Declare the setting.',
    afterwards: 'Set it back to automatic, and restart both again.',
  },
  limitOutputBandwidth: {
    label: 'Limit the output bandwidth to 9 Gbit/s',
    order: (place) => `Limit to 9 Gbit/s the output of ${place}`,
    instructions:
      'Set this device’s output to 9 Gbit/s at most (a lower rate, 8 bit, or 4:2:0), so that the cable behind it carries less. Declare the setting.',
    afterwards: 'Set the output back to what it was, mostly automatic.',
  },
  reissueHotPlug: {
    label: 'Re-issue hot plug',
    order: (place) => `Re-issue hot plug at ${place}`,
    instructions:
      'Have this device signal hot plug to its source again, by its own menu or remote control and without touching a plug, and note what happens. This is information, never a repair.',
    afterwards: 'Nothing to put back: close it as put back.',
  },
  moveProcessorToDisplay: {
    label: 'Move the processor next to the display',
    order: (place) => `Move next to the display: ${place}`,
    instructions:
      'Put the processor beside the display and join them by the short passive cable. This is for finding the fault only.',
    afterwards: 'Bring the processor back to its place and join both links as they were.',
  },
  substituteDisplay: {
    label: 'Substitute the display',
    order: (place) => `Substitute ${place}`,
    instructions:
      'Plug the cable that feeds the display into another one. A display with other content protection would change two things at once.',
    afterwards: 'Plug the cable back into the display’s same port.',
  },
  restoreSettings: {
    label: 'Restore earlier settings',
    order: (place) => `Restore earlier settings of ${place}`,
    instructions:
      'Set this device as it was while everything worked. Declare each setting, and read the settings out before and after.',
    afterwards: 'The earlier settings may stay. If they must go back, set what was read out before.',
  },
  updateFirmware: {
    label: 'Update the firmware',
    order: (place) => `Update the firmware of ${place}`,
    instructions:
      'Write the settings down, update by the maker’s notes, then set what the update has reset. Read firmware level and settings out before and after.',
    afterwards: 'It can’t be undone: keep it, whatever the retest says.',
  },
} satisfies Record<string, ChangeWords>;
