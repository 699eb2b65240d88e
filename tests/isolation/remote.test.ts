import { describe, expect, it } from 'vitest';
import type { Link } from '../../shared/contract/chain.ts';
import { changeKinds, clientWays } from '../../shared/contract/triage-names.ts';
import type { Candidate } from '../../shared/isolation/candidates.ts';
import { changeCatalogue } from '../../shared/isolation/change-catalogue.ts';
import { whyNotByPhone } from '../../shared/isolation/client-reach.ts';
import { plainCase, planRemotely } from '../../shared/isolation/index.ts';
import { cableFor, hasItem, kitMessage } from '../../shared/isolation/kit.ts';
import { changesOn } from '../bench/isolation-chains.ts';
import { cable, display, processor, receiver, rowOf, source } from '../chain/build-chain.ts';
import { cinema, facts, input } from './cinema-case.ts';

describe('before anybody drives', () => {
  const reach = { reachableDevices: ['player', 'receiver'] };
  const remote = planRemotely(input({}, { baseline: null }), reach);

  it('asks a client for nothing but what is safe', () => {
    const { advice } = remote.plan;
    if (advice.kind !== 'test') throw new Error('A test was expected.');
    for (const { candidate } of [advice.next, ...advice.others]) {
      const { action } = candidate;
      expect(candidate.kit).toEqual([]);
      if (action.kind === 'menu') continue;
      expect(clientWays).toContain(changeCatalogue[action.test].byClient);
    }
  });

  it('sends nobody to a switch out of reach, and says why of what comes first on the visit', () => {
    const cycles = changesOn(cinema).filter(({ kind }) => kind === 'powerCycle');
    const ofClient = (reachableDevices: string[]) => {
      const here = {
        kit: null,
        people: 1,
        refused: [{ test: 'menu' }, { test: 'otherSource' }],
      } as const;
      const only = input({ changes: cycles, here }, { baseline: null });
      const { plan, visitFirst } = planRemotely(only, { reachableDevices });
      const ids =
        plan.advice.kind === 'test'
          ? [plan.advice.next, ...plan.advice.others].map(({ candidate }) => candidate.id)
          : [];
      return { ids, visitFirst };
    };
    expect(ofClient([]).ids).toEqual([]);
    expect(ofClient(['processor']).ids).toEqual(['powerCycle device:processor']);
    const reseats = input(
      {
        changes: changesOn(cinema).filter(({ kind }) => kind === 'reseat'),
        here: { kit: null, people: 1, refused: [] },
      },
      { baseline: null, symptom: { ...facts.symptom, kind: 'wrongRateOrResolution' } },
    );
    const nobody = planRemotely(reseats, { reachableDevices: cinema.devices.map(({ id }) => id) });
    expect(nobody.plan.advice.kind).toBe('visit');
    expect(nobody.visitFirst?.text.values).toMatchObject({ change: 'reseat' });
    expect(nobody.visitFirst?.why.code).toBe('phonePullsPlugs');
  });

  it('gives the chance of a visit, less for what the client can put right', () => {
    const nothing = planRemotely(input({}, { baseline: null }), { reachableDevices: [] }).visitChance;
    expect(remote.visitChance).toBeGreaterThan(0.5);
    expect(remote.visitChance).toBeLessThan(nothing);
    expect(nothing).toBeLessThanOrEqual(1);
  });

  it('packs cables of the chain’s categories, long enough, each with its chance', () => {
    expect(remote.kit.map(({ item }) => item)).toContainEqual({
      kind: 'cable',
      category: 'ultraHighSpeed',
      lengthM: 15,
      construction: 'activeOptical',
    });
    for (const { probability, item, text } of remote.kit) {
      if (item.kind === 'cable') expect(text.values).toMatchObject({ lengthM: item.lengthM });
      expect(probability).toBeGreaterThan(0.02);
      expect(probability).toBeLessThanOrEqual(1);
    }
    const chances = remote.kit.map(({ probability }) => probability);
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
  });

  it('packs for the suspect: a longer cable for a longer link', () => {
    const chain = rowOf([
      source('player'),
      receiver('receiver'),
      processor('processor'),
      display('projector'),
    ]);
    const long = {
      ...chain,
      links: [...chain.links.slice(0, 2), cable('processor.out1', 'projector.in1', { lengthM: 11 })],
    };
    const kit = planRemotely(
      {
        ...input({ changes: changesOn(long) }),
        facts: {
          ...plainCase(long, facts.symptom),
          results: [{ kind: 'menu', deviceId: 'processor', answer: 'vanished' }],
        },
      },
      { reachableDevices: [] },
    ).kit;
    expect(kit[0]?.item).toEqual({
      kind: 'cable',
      category: 'premiumHighSpeed',
      lengthM: 12.5,
      construction: 'activeOptical',
    });
  });
});

describe('a cable to pack', () => {
  const wanted = (facts: Partial<Link>) => cableFor(cable('receiver.out1', 'tv.in1', facts));
  const optical = wanted({ construction: 'activeOptical', category: 'ultraHighSpeed', lengthM: 15 });
  const copper = wanted({ lengthM: 4 });

  it.each([
    [optical, 'kitOpticalCable', { category: 'ultraHighSpeed', lengthM: 15 }],
    [
      wanted({ construction: 'activeCopper', lengthM: 9 }),
      'kitActiveCopperCable',
      { category: 'premiumHighSpeed', lengthM: 10 },
    ],
    [copper, 'kitCable', { category: 'premiumHighSpeed', lengthM: 5 }],
  ])('is made as the one that it stands in for', (item, code, values) => {
    expect(kitMessage(item)).toEqual({ code, values });
  });

  it('is at hand where one made like it is, or one of which nobody said how it is made', () => {
    const long = { kind: 'cable', category: 'ultraHighSpeed', lengthM: 20 } as const;
    expect(hasItem([{ ...long, construction: 'activeOptical' }], optical)).toBe(true);
    expect(hasItem([{ ...long, construction: 'activeCopper' }], optical)).toBe(false);
    expect(hasItem([long], optical)).toBe(true);
    expect(hasItem([{ ...long, construction: 'activeOptical' }], copper)).toBe(true);
  });
});

describe('each kind of change, by phone', () => {
  const byPhone = changeKinds.filter((kind) =>
    clientWays.some((way) => way === changeCatalogue[kind].byClient),
  );
  const at = (kind: (typeof changeKinds)[number], more: Partial<Candidate> = {}): Candidate => ({
    id: kind,
    action: { kind: 'test', test: kind, target: { kind: 'device', deviceId: 'processor' } },
    setupMin: 5,
    restoreMin: 0,
    kit: [],
    people: 1,
    riskMin: 0,
    ...more,
  });

  it.each(byPhone)('%s takes no kit, no second person, no setting, no risk beyond the usual', (kind) => {
    const { kit, needs, people, settings, canBeUndone, cautions } = changeCatalogue[kind];
    expect({ kit, needs, people, settings, canBeUndone }).toEqual({
      kit: [],
      needs: [],
      people: 1,
      settings: null,
      canBeUndone: true,
    });
    for (const caution of cautions)
      expect(['cautionMains', 'cautionEarth', 'cautionDisplay', 'cautionLifting']).not.toContain(caution);
  });

  it.each(changeKinds.filter((kind) => !byPhone.includes(kind)))('%s is refused with its reason', (kind) => {
    const all = { reachableDevices: cinema.devices.map(({ id }) => id) };
    expect(whyNotByPhone(at(kind), all)?.code).toBe(changeCatalogue[kind].byClient);
  });

  it('is none that asks for a setting: a menu can go with the picture', () => {
    const asked = byPhone.filter((kind) => changeCatalogue[kind].settings !== null);
    expect(asked).toEqual([]);
    expect(changeKinds.some((kind) => changeCatalogue[kind].byClient === 'phoneTakesSight')).toBe(true);
  });

  it('is asked for at a switch only where that is within reach', () => {
    expect(whyNotByPhone(at('powerCycle'), { reachableDevices: [] })?.code).toBe('phoneOutOfReach');
    expect(whyNotByPhone(at('powerCycle'), { reachableDevices: ['processor'] })).toBeNull();
    expect(
      whyNotByPhone(at('otherTitle', { kit: [{ kind: 'source' }] }), { reachableDevices: [] })?.code,
    ).toBe('phoneTakesKit');
  });
});
