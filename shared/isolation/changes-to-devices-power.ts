import type { Device } from '../contract/chain.ts';
import { type Caution, changeTo, correction, mayStay, minutes } from './change-facts.ts';
import { eitherSide } from './change-places.ts';
import { assumed, practice } from './figures.ts';

const change = changeTo('device');
const ifOverhead = ({ role }: Device): Caution[] => (role === 'display' ? ['cautionDisplay'] : []);

/**
 * The kinds of change made to a device's power and heat. Common practice of the trade, no source; figures say their own
 * origin.
 */
export const changesOfPower = {
  powerCycle: change({
    ...correction,
    whyNot: eitherSide,
    canBeRepeated: true,
    switchesOff: true,
    cautions: ['cautionPowerOff'],
    byClient: 'switch',
    minutes: minutes(5, 0),
    riskMin: 1,
    effects: {
      target: practice({ latched: 0.95, edid: 0.3, contentProtection: 0.3, firmware: 0.25, fiveVolt: 0.2 }),
    },
  }),
  otherOutlet: change({
    ...mayStay,
    whyNot: eitherSide,
    switchesOff: true,
    cautions: ['cautionPowerOff', 'cautionEarth'],
    cautionsAt: ifOverhead,
    byClient: 'phoneAtMains',
    minutes: minutes(10, 5),
    effects: {
      // It is switched off and on on the way.
      target: assumed({ powerOrHeat: 0.3, latched: 0.9 }),
      whole: assumed({ earthLoop: 0.3, disturbance: 0.15 }),
    },
  }),
  otherSupply: change({
    ...mayStay,
    whyNot: eitherSide,
    needs: ['needOtherSupply'],
    kit: [{ kind: 'powerSupply' }],
    switchesOff: true,
    cautions: ['cautionSupply', 'cautionPowerOff'],
    cautionsAt: ifOverhead,
    byClient: 'phoneTakesKit',
    minutes: minutes(10, 5),
    riskMin: 5,
    effects: { target: assumed({ powerOrHeat: 0.5, latched: 0.9 }) },
  }),
  clearVents: change({
    ...correction,
    whyNot: eitherSide,
    canBeRepeated: true,
    cautions: ['cautionHeat', 'cautionMains'],
    cautionsAt: ifOverhead,
    byClient: 'phoneAtMains',
    minutes: minutes(15, 0),
    effects: { target: practice({ powerOrHeat: 0.5 }) },
  }),
  warmByUse: change({
    whyNot: eitherSide,
    canBeRepeated: true,
    showsCulprit: false,
    cautions: ['cautionHeat'],
    byClient: 'remoteControl',
    minutes: minutes(60, 0),
    effects: {},
    provokes: { target: practice({ powerOrHeat: 0.6 }), ends: assumed({ contact: 0.1, linkPower: 0.15 }) },
    provokingMin: 15,
  }),
};
