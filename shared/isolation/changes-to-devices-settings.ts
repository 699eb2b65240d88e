import { changeTo, mayStay, minutes } from './change-facts.ts';
import { onlyRoles, outputSide } from './change-places.ts';
import { assumed, practice } from './figures.ts';

const change = changeTo('device');

/**
 * The kinds of change made to what a device plays, sends, or takes as an order. Common practice of the trade, no
 * source; figures say their own origin.
 */
export const changesOfSettings = {
  otherTitle: change({
    whyNot: (scene, device) => onlyRoles(device, 'source') ?? outputSide(scene, device),
    byClient: 'remoteControl',
    minutes: minutes(3, 1),
    effects: { target: practice({ contentDependent: 0.75, contentProtection: 0.15 }) },
  }),
  otherApplication: change({
    whyNot: (scene, device) => onlyRoles(device, 'source') ?? outputSide(scene, device),
    byClient: 'remoteControl',
    minutes: minutes(5, 2),
    effects: { target: assumed({ contentDependent: 0.65, contentProtection: 0.3, firmware: 0.25 }) },
  }),
  otherOutputSetting: change({
    ...mayStay,
    whyNot: (scene, device) => onlyRoles(device, 'source') ?? outputSide(scene, device),
    byClient: 'phoneTakesSight',
    minutes: minutes(5, 5),
    effects: {
      target: practice({ setting: 0.75, portMode: 0.4, contentDependent: 0.3 }),
      downstream: assumed({ bandwidth: 0.3, edid: 0.15 }),
    },
    settings: { usual: null },
  }),
  lowerRate: change({
    ...mayStay,
    whyNot: (scene, device) => onlyRoles(device, 'source', 'processor') ?? outputSide(scene, device),
    byClient: 'phoneTakesSight',
    minutes: minutes(5, 5),
    effects: {
      target: assumed({ portMode: 0.6, contentDependent: 0.3, processing: 0.3 }),
      downstream: practice({ bandwidth: 0.85, portMode: 0.75, linkPower: 0.2, contact: 0.12, coupling: 0.6 }),
    },
    settings: { usual: null },
  }),
  raiseRate: change({
    ...mayStay,
    whyNot: (scene, device) => onlyRoles(device, 'source', 'processor') ?? outputSide(scene, device),
    byClient: 'phoneTakesSight',
    minutes: minutes(5, 5),
    effects: { target: practice({ setting: 0.4, portMode: 0.3 }) },
    provokes: { downstream: practice({ bandwidth: 0.6, coupling: 0.5, linkPower: 0.25, portMode: 0.5 }) },
    provokingMin: 15,
    settings: { usual: null },
  }),
  controlBusOff: change({
    ...mayStay,
    whyNot: (_scene, device) => onlyRoles(device, 'source', 'receiver', 'processor', 'display'),
    cautions: ['cautionReturnAudio'],
    byClient: 'phoneTakesSight',
    minutes: minutes(5, 5),
    effects: {
      // What this device says on the bus, or is told, is then gone for all of them.
      whole: assumed({ controlBus: 0.75, wakeOrder: 0.15, controlSystem: 0.1 }),
    },
    settings: { usual: null },
  }),
};
