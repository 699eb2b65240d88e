import { freePorts } from '../chain/graph.ts';
import { placeKey } from '../chain/place.ts';
import { bitRateGbps } from '../chain/signal-mode.ts';
import { message } from '../message/message.ts';
import { changeTo, correction, mayStay, minutes } from './change-facts.ts';
import { portPossible } from './change-places.ts';
import { assumed, practice } from './figures.ts';

const change = changeTo('port');

/** The kinds of change made to a port. Common practice of the trade, no source; figures say their own origin. */
export const changesToPorts = {
  movePort: change({
    ...mayStay,
    whyNot: (scene, { device, port }) =>
      portPossible(scene, { device, port }) ??
      (freePorts(scene.chain, device.id, port.direction).length > 0
        ? null
        : message(port.direction === 'input' ? 'noOtherInput' : 'noOtherOutput')),
    cautions: ['cautionMains'],
    cautionsAt: ({ device }) => (device.role === 'display' ? ['cautionDisplay'] : []),
    byClient: 'phonePullsPlugs',
    mends: ['lower-rate-port'],
    minutes: minutes(5, 5),
    effects: {
      target: assumed({ portMode: 0.8, edid: 0.15, powerOrHeat: 0.05 }),
      ends: assumed({ contact: 0.5 }),
    },
  }),
  raisePortMode: change({
    ...correction,
    whyNot: (scene, { device, port }) => {
      if (port.setMode === null) {
        const place = placeKey({ kind: 'port', deviceId: device.id, portId: port.id });
        return message(scene.lookedAtPorts.includes(place) ? 'portModeNotSet' : 'lookAtPortModeFirst');
      }
      return bitRateGbps(port.setMode) < bitRateGbps(port.highestMode)
        ? portPossible(scene, { device, port })
        : message('portModeHighest');
    },
    byClient: 'phoneTakesSight',
    mends: ['port-mode'],
    minutes: minutes(5, 5),
    effects: { target: practice({ portMode: 0.93 }) },
    settings: { usual: null },
  }),
};
