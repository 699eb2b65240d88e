import { describe, expect, it } from 'vitest';
import { placeKey } from '../../shared/chain/place.ts';
import type { Place } from '../../shared/contract/chain.ts';
import { groupedWithFirst } from '../../shared/isolation/alternatives.ts';
import { candidatesFor } from '../../shared/isolation/candidates.ts';
import { changeCatalogue } from '../../shared/isolation/change-catalogue.ts';
import { clustersOf, clustersStanding, peopleFor, sparedMin } from '../../shared/isolation/clusters.ts';
import { type Result, standingOf } from '../../shared/isolation/index.ts';
import type { Ranked } from '../../shared/isolation/search-state.ts';
import { changesOn } from '../bench/isolation-chains.ts';
import { cinema, facts } from './cinema-case.ts';

const atProjector = { kind: 'device', deviceId: 'projector' } as const;
const atReceiver = { kind: 'device', deviceId: 'receiver' } as const;
const L4 = { kind: 'link', linkId: 'L4' } as const;
const upTheLadder: Result = {
  kind: 'test',
  test: 'otherOutlet',
  target: atProjector,
  watch: { mode: 'time', minutes: 9, occurrences: 1 },
};

describe('what several tests share', () => {
  it('is a ladder at a display, an opened rack between, a second person for what is heavy; nothing for a menu', () => {
    expect(clustersOf(cinema, { test: 'otherOutlet', target: atProjector })).toEqual(['ladder']);
    expect(clustersOf(cinema, { test: 'bypassDevice', target: atReceiver })).toEqual(['rack']);
    expect(clustersOf(cinema, { test: 'substituteDisplay', target: atProjector })).toEqual([
      'ladder',
      'secondPerson',
    ]);
    expect(clustersOf(cinema, { test: 'reseat', target: L4 })).toEqual(['ladder', 'rack']);
    expect(clustersOf(cinema, { test: 'limitOutputBandwidth', target: atReceiver })).toEqual([]);
    expect(clustersOf(cinema, { test: 'otherWakeOrder', target: { kind: 'chain' } })).toEqual([]);
  });

  it('is paid once: what stands since a test of this round is off the set-up of the others, and of no menu', () => {
    expect([...clustersStanding({ chain: cinema, results: [upTheLadder] })]).toEqual(['ladder']);
    const minutesOf = (results: Result[]) => {
      const { model } = standingOf({ ...facts, results });
      return new Map(candidatesFor(model, changesOn(cinema)).map(({ id, setupMin }) => [id, setupMin]));
    };
    const [before, after] = [minutesOf([]), minutesOf([upTheLadder])];
    for (const id of ['powerCycle device:projector', 'otherSupply device:projector', 'reseat link:L4'])
      expect(after.get(id)).toBeLessThan(before.get(id) ?? 0);
    for (const id of ['bypassDevice device:receiver', 'menu device:projector', 'reseat link:L1'])
      expect(after.get(id)).toBe(before.get(id));
    for (const minutes of after.values()) expect(minutes).toBeGreaterThan(0);
  });

  it('leaves to every test some set-up of its own, and takes nothing off where nothing stands', () => {
    expect(sparedMin(5, ['ladder', 'rack'], new Set(['ladder', 'rack'] as const))).toBeLessThan(5);
    expect(sparedMin(40, ['ladder', 'rack'], new Set(['ladder', 'rack'] as const))).toBe(9);
    expect(sparedMin(40, ['ladder'], new Set())).toBe(0);
  });

  it('brings what shares a ladder with the next test before what is a little quicker and does not', () => {
    const ranked = (kind: 'otherOutlet' | 'otherSupply', target: Place, expectedMin: number): Ranked => ({
      expectedMin,
      option: {
        candidate: {
          id: `${kind} ${placeKey(target)}`,
          action: { kind: 'test', test: kind, target },
          setupMin: 20,
          restoreMin: 0,
          kit: [],
          people: 1,
          riskMin: 0,
        },
        first: Float64Array.from([0.5]),
        firstMin: 20,
        secondMin: 20,
        handlingMin: 20,
        isRepair: false,
        exposure: 1,
        after: -1,
        resumeMin: 0,
      },
    });
    const order = (sharedExpectedMin: number) =>
      groupedWithFirst(cinema, [
        ranked('otherOutlet', atProjector, 90),
        ranked('otherOutlet', atReceiver, 100),
        ranked('otherSupply', atProjector, sharedExpectedMin),
      ]).map(({ option: { candidate } }) => candidate.id);
    expect(order(104)[1]).toBe('otherSupply device:projector');
    expect(order(106)[1]).toBe('otherOutlet device:receiver');
    expect(order(104)[0]).toBe('otherOutlet device:projector');
  });
});

describe('how many people a test takes', () => {
  it('is what the catalogue says, and two where a cable is pulled through a conduit', () => {
    const inConduit = {
      ...cinema,
      links: cinema.links.map((link) => ({ ...link, route: 'inConduit' as const })),
    };
    expect(peopleFor(inConduit, { test: 'replaceCable', target: L4 })).toBe(2);
    expect(peopleFor(cinema, { test: 'replaceCable', target: L4 })).toBe(1);
    expect(peopleFor(inConduit, { test: 'reseat', target: L4 })).toBe(1);
    expect(peopleFor(cinema, { test: 'substituteDisplay', target: atProjector })).toBe(
      changeCatalogue.substituteDisplay.people,
    );
    const { model } = standingOf({ ...facts, chain: inConduit });
    const pulled = candidatesFor(model, [{ kind: 'replaceCable', target: L4, setupMin: 60, restoreMin: 60 }]);
    expect(pulled.find(({ id }) => id === 'replaceCable link:L4')?.people).toBe(2);
  });
});
