import { changeTo, correction, mayStay, minutes } from './change-facts.ts';
import { assumed, practice } from './figures.ts';

const change = changeTo('chain');
const always = () => null;

/**
 * The kinds of change made to the chain as a whole, whatever side the fault lies on. Common practice of the trade, no
 * source; figures say their own origin.
 */
export const changesToChains = {
  mainsOffForAll: change({
    ...correction,
    whyNot: always,
    canBeRepeated: true,
    switchesOff: true,
    // It restarts everything at once, so it doesn't say what of all that had hung.
    showsCulprit: false,
    cautions: ['cautionMainsOrder', 'cautionMains'],
    byClient: 'phoneAtMains',
    minutes: minutes(15, 0),
    riskMin: 5,
    effects: {
      anywhere: practice({
        latched: 0.93,
        contentProtection: 0.4,
        edid: 0.35,
        fiveVolt: 0.25,
        firmware: 0.25,
        powerOrHeat: 0.1,
      }),
      whole: assumed({ wakeOrder: 0.6, controlSystem: 0.1 }),
    },
  }),
  otherWakeOrder: change({
    ...mayStay,
    whyNot: always,
    switchesOff: true,
    cautions: ['cautionBeam'],
    byClient: 'remoteControl',
    minutes: minutes(5, 2),
    effects: {
      whole: practice({ wakeOrder: 0.9, controlSystem: 0.3 }),
      anywhere: assumed({ edid: 0.3, contentProtection: 0.3, fiveVolt: 0.25 }),
    },
  }),
  ownRemotes: change({
    ...mayStay,
    whyNot: always,
    cautions: ['cautionBeam'],
    byClient: 'remoteControl',
    minutes: minutes(5, 2),
    effects: { whole: practice({ controlSystem: 0.93, wakeOrder: 0.3 }) },
  }),
  disconnectDisturber: change({
    ...mayStay,
    whyNot: always,
    cautions: ['cautionOthersAppliances'],
    byClient: 'switch',
    minutes: minutes(10, 5),
    effects: { whole: assumed({ disturbance: 0.75, earthLoop: 0.1 }) },
  }),
  unplugAerial: change({
    whyNot: always,
    canBeRepeated: true,
    cautions: ['cautionEarth', 'cautionThunderstorm'],
    byClient: 'phonePullsPlugs',
    minutes: minutes(5, 5),
    effects: { whole: assumed({ earthLoop: 0.6, disturbance: 0.2 }) },
  }),
  unplugNetwork: change({
    whyNot: always,
    canBeRepeated: true,
    cautions: ['cautionEarth', 'cautionOthersAppliances'],
    byClient: 'phonePullsPlugs',
    minutes: minutes(5, 5),
    effects: { whole: assumed({ earthLoop: 0.35, controlSystem: 0.2, disturbance: 0.1 }) },
  }),
  oneSocketCircuit: change({
    ...mayStay,
    whyNot: always,
    needs: ['needOutletStrip'],
    cautions: ['cautionEarth', 'cautionCableAcrossFloor', 'cautionMains'],
    byClient: 'phoneAtMains',
    minutes: minutes(20, 15),
    effects: { whole: assumed({ earthLoop: 0.75, disturbance: 0.25 }) },
  }),
};
