import type { ChangeKind } from '../../../shared/contract/triage.ts';

/** What somebody who makes a change has to know, whatever the chain. */
export type CatalogueEntry = {
  label: string;
  /** Has to be put back; other kinds may stay once they cleared the fault. */
  diagnostic: boolean;
  /** Puts right what is wrong anyway: may stay whatever the retest says. */
  plainCorrection: boolean;
  /** Can be put back at all. */
  canBeUndone: boolean;
  /** A fault that it clears names a culprit. */
  showsCulprit: boolean;
  /** The kind of place that it is made to. */
  target: 'device' | 'port' | 'link';
  /** What to have at hand. */
  needs: string[];
  cautions: Caution[];
  instructions: string;
  afterwards: string;
};

export type Caution =
  | 'ladder'
  | 'projectorLight'
  | 'opticalCable'
  | 'mains'
  | 'floorCable'
  | 'wallCable'
  | 'conduit'
  | 'lifting'
  | 'firmware';

/** The usual care; where law or trade rules apply, they and the people licensed for the work come first. */
export const cautionTexts: Record<Caution, string> = {
  ladder:
    'A projector may hang overhead: use a ladder that stands safely, with somebody to hold it, and never reach out sideways.',
  projectorLight:
    'Never look into a projector’s lens while its lamp or laser is on; switch it off and let it cool before working at it.',
  opticalCable:
    'An active optical cable carries laser light: don’t look into its ends, don’t open its plugs, don’t bend it tightly.',
  mains:
    'There is mains voltage in racks and devices: switch off and unplug before reaching behind them, open no housing, and leave mains wiring to a licensed electrician.',
  floorCable:
    'A cable across the floor trips people: keep it out of doorways, tape or cover it, tell everybody in the room, and take it up when you leave.',
  wallCable:
    'Cables in walls must have the fire rating that local codes ask for; opening walls and fire stops is work for the licensed trades.',
  conduit:
    'Check what else runs in the conduit and never pull beside mains; the cable’s fire rating has to fit local codes.',
  lifting: 'Displays and processors are heavy and tip over: lift with two people.',
  firmware:
    'Don’t let the power fail during the update, don’t switch off, and write down all settings first: an update can reset them.',
};

type Facts = Partial<CatalogueEntry> &
  Pick<CatalogueEntry, 'label' | 'target' | 'instructions' | 'afterwards'>;

const entry = (facts: Facts): CatalogueEntry => ({
  diagnostic: true,
  plainCorrection: false,
  canBeUndone: true,
  showsCulprit: true,
  needs: [],
  cautions: [],
  ...facts,
});
const mayStay = (facts: Facts): CatalogueEntry => entry({ diagnostic: false, ...facts });
const correction = (facts: Facts): CatalogueEntry => mayStay({ plainCorrection: true, ...facts });

const sureCable = 'a cable known to be good: certified, long enough, no longer than needed';

/** The kinds of change there are. Common practice of the trade, no source; their minutes are figures of the fault table. */
export const changeCatalogue: Record<ChangeKind, CatalogueEntry> = {
  reseat: correction({
    label: 'Reseat both plugs',
    target: 'link',
    cautions: ['mains'],
    instructions:
      'Switch both devices to standby. Pull the plug at each end, look for bent contacts and dirt, and push it fully home. Touch no other cable.',
    afterwards: 'Nothing to put back.',
  }),
  replaceCable: mayStay({
    label: 'Replace the cable',
    target: 'link',
    needs: [sureCable],
    cautions: ['mains'],
    instructions:
      'Put a cable known to be good into the same two ports. A directional cable goes with its source end to the source; power it where its maker asks for that. Mark the old cable and keep it.',
    afterwards: 'Keep the new cable if the fault is gone; otherwise put the old one back.',
  }),
  temporaryCable: entry({
    label: 'Lay a temporary cable across the floor',
    target: 'link',
    needs: [sureCable, 'tape or a cable cover'],
    cautions: ['floorCable', 'mains'],
    instructions:
      'Lay a cable known to be good from port to port in the open, and leave the fixed cable where it is with both its plugs out.',
    afterwards: 'Take the temporary cable up and plug the fixed one back into the same two ports.',
  }),
  otherSource: entry({
    label: 'Play another source in its place',
    target: 'device',
    instructions:
      'Leave every cable as it is and play this source with content of the same kind and format as the one that shows the fault. Where it is the source that shows it itself, put one you brought in its place, into the same port.',
    afterwards:
      'Choose the usual source again; where one was brought, plug the old one back into the same port.',
  }),
  sourceIntoProcessor: entry({
    label: 'Plug the source straight into the processor',
    target: 'device',
    needs: [sureCable],
    cautions: ['floorCable', 'mains'],
    instructions:
      'Take everything between this source and the processor out of the way: one cable from the source to a processor input, and that input chosen. Sound may be missing meanwhile.',
    afterwards: 'Plug the source back where it was and choose the old input again.',
  }),
  bypassDevice: entry({
    label: 'Bypass the device',
    target: 'device',
    needs: ['a coupler that passes the full rate, or a longer cable known to be good'],
    cautions: ['mains'],
    instructions:
      'Join what feeds the device straight to what follows it. Extenders come in pairs: take both ends out.',
    afterwards: 'Put the device back between the same two ports.',
  }),
  unplugBranch: entry({
    label: 'Unplug the parallel branch',
    target: 'link',
    cautions: ['mains'],
    instructions:
      'Pull the plug of this branch at the device that feeds it. A display in standby still takes part while it is plugged in.',
    afterwards: 'Plug the branch back into the same port.',
  }),
  movePort: mayStay({
    label: 'Move the plug to another port',
    target: 'port',
    cautions: ['mains'],
    instructions:
      'Move this plug to a free port of the same device, in the same direction and with the same abilities and settings, and choose that port.',
    afterwards: 'Leave it there if the fault is gone; otherwise move it back.',
  }),
  raisePortMode: correction({
    label: 'Raise the port’s mode',
    target: 'port',
    instructions:
      'Set this port to the highest mode it has. Declare the setting, and read the settings out before and after.',
    afterwards: 'The highest mode may stay. If it must go back, set what it was before.',
  }),
  disableProcessing: mayStay({
    label: 'Switch off processing and EDID management',
    target: 'device',
    instructions:
      'Switch off scaling, conversion, picture processing and EDID management in this device, so that it passes on what it gets. Declare each setting, and read the settings out before and after.',
    afterwards: 'Leave it off if the fault is gone; otherwise set everything as it was.',
  }),
  limitInputBandwidth: entry({
    label: 'Limit the advertised input bandwidth to 9 Gbit/s',
    target: 'device',
    instructions:
      'Set the input’s advertised bandwidth to 9 Gbit/s, then restart this device and the source so that the source reads it anew. Declare the setting.',
    afterwards: 'Set it back to automatic, and restart both again.',
  }),
  limitOutputBandwidth: entry({
    label: 'Limit the output bandwidth to 9 Gbit/s',
    target: 'device',
    instructions:
      'Set this device’s output to 9 Gbit/s at most (a lower rate, 8 bit, or 4:2:0), so that the cable behind it carries less. Declare the setting.',
    afterwards: 'Set the output back to what it was, mostly automatic.',
  }),
  reissueHotPlug: entry({
    label: 'Re-issue hot plug',
    target: 'device',
    showsCulprit: false,
    instructions:
      'Have this device signal hot plug to its source again, by its own menu or remote control and without touching a plug, and note what happens. This is information, never a repair.',
    afterwards: 'Nothing to put back: close it as put back.',
  }),
  insertSyncSwitch: mayStay({
    label: 'Insert a switch that regenerates sync',
    target: 'link',
    needs: [
      'a switch that regenerates sync and passes the full rate',
      'a short cable known to be good',
      'its power supply',
    ],
    cautions: ['mains'],
    instructions:
      'Put the switch into this link, at the end nearer to the display, with its scaling and its own EDID off.',
    afterwards: 'It may stay if the fault is gone; otherwise take it out and join the link as it was.',
  }),
  moveProcessorToDisplay: entry({
    label: 'Move the processor next to the display',
    target: 'device',
    needs: [
      'a passive cable of at most about 4 m (13 ft), known to be good',
      'a long cable for the processor’s input',
      'mains near the display',
    ],
    cautions: ['ladder', 'projectorLight', 'lifting', 'floorCable', 'mains'],
    instructions:
      'Put the processor beside the display and join them by the short passive cable. This is for finding the fault only.',
    afterwards: 'Bring the processor back to its place and join both links as they were.',
  }),
  substituteDisplay: entry({
    label: 'Substitute the display',
    target: 'device',
    needs: ['another display that does the same content protection and takes the same signal'],
    cautions: ['ladder', 'projectorLight', 'lifting', 'mains'],
    instructions:
      'Plug the cable that feeds the display into another one. A display with other content protection would change two things at once.',
    afterwards: 'Plug the cable back into the display’s same port.',
  }),
  restoreSettings: correction({
    label: 'Restore earlier settings',
    target: 'device',
    needs: ['the earlier settings, written down or saved'],
    instructions:
      'Set this device as it was while everything worked. Declare each setting, and read the settings out before and after.',
    afterwards: 'The earlier settings may stay. If they must go back, set what was read out before.',
  }),
  updateFirmware: correction({
    label: 'Update the firmware',
    target: 'device',
    canBeUndone: false,
    needs: ['the firmware file and its maker’s notes', 'time: an interrupted update can spoil the device'],
    cautions: ['firmware', 'mains'],
    instructions:
      'Write the settings down, update by the maker’s notes, then set what the update has reset. Read firmware level and settings out before and after.',
    afterwards: 'It can’t be undone: keep it, whatever the retest says.',
  }),
};

/** A kind of change in plain words, as a technician would say it. */
export const changeLabel = (kind: ChangeKind): string => changeCatalogue[kind].label;
