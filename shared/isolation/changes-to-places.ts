import { findDevice } from '../chain/graph.ts';
import { type Caution, changeTo, minutes, type PlaceAt } from './change-facts.ts';
import { assumed } from './figures.ts';

const change = changeTo('place');

const ifOverhead = ({ chain, place }: PlaceAt): Caution[] => {
  const device = place.kind === 'device' || place.kind === 'port' ? findDevice(chain, place.deviceId) : null;
  return device?.role === 'display' ? ['cautionDisplay'] : [];
};

/**
 * Changes that this program does not know: described by whoever declares one, or by the organisation. Nothing is known
 * of what they do but that they are made to a place, so that they say little for or against it.
 */
export const changesToPlaces = {
  otherChange: change({
    describedBy: 'whoDeclares',
    whyNot: () => null,
    canBeRepeated: true,
    cautions: ['cautionMains'],
    cautionsAt: ifOverhead,
    minutes: minutes(15, 10),
    effects: { target: assumed({ any: 0.3 }) },
  }),
  ownKind: change({
    describedBy: 'organisation',
    whyNot: () => null,
    canBeRepeated: true,
    cautionsAt: ifOverhead,
    minutes: minutes(15, 10),
    effects: { target: assumed({ any: 0.3 }), ends: assumed({ any: 0.15 }) },
  }),
};
