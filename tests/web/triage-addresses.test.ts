import { describe, expect, it } from 'vitest';
import { placeKey } from '../../shared/chain/place.ts';
import type { Place } from '../../shared/contract/chain.ts';
import { declareAddress, kindOf, placeOf } from '../../src/web/technician/common/triage-addresses.ts';

const places: Place[] = [
  { kind: 'chain' },
  { kind: 'device', deviceId: 'processor' },
  { kind: 'port', deviceId: 'switch', portId: 'in3' },
  { kind: 'link', linkId: 'L4' },
];

describe('the address at which a change is declared', () => {
  it.each(places)('names a place of kind $kind so that it is found again', (place) => {
    expect(placeOf(placeKey(place))).toEqual(place);
  });

  it('names the kind, and which of the organisation’s own it is', () => {
    const target = places[3] as Place;
    const segment = (address: string) => address.split('/').at(-2) ?? '';
    const ownKindId = '5d0f4a52-6a1f-4a0e-9a77-0a3f5b1f2c01';
    const own = segment(declareAddress('t', { kind: 'ownKind', target, ownKindId }));
    expect(kindOf(own)).toEqual({ kind: 'ownKind', ownKindId });
    expect(kindOf(segment(declareAddress('t', { kind: 'reseat', target })))).toEqual({
      kind: 'reseat',
      ownKindId: null,
    });
  });

  it('is none for what is no place', () => {
    expect(placeOf('')).toBeNull();
    expect(placeOf('device')).toBeNull();
    expect(placeOf('port:switch')).toBeNull();
    expect(placeOf('room:cinema')).toBeNull();
  });
});
