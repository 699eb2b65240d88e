import { describe, expect, it } from 'vitest';
import { plainCase, planRemotely } from '../../shared/isolation/index.ts';
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
      expect([
        'otherSource',
        'reissueHotPlug',
        'raisePortMode',
        'disableProcessing',
        'limitInputBandwidth',
        'limitOutputBandwidth',
        'reseat',
        'unplugBranch',
        'movePort',
      ]).toContain(action.test);
    }
  });

  it('never sends a client to an optical cable, a display overhead or a closed rack', () => {
    const reseats = changesOn(cinema).filter(({ kind }) => kind === 'reseat');
    const ofClient = (reachableDevices: string[], chain = cinema) => {
      const only = input(
        {
          changes: reseats,
          here: { kit: null, people: 1, refused: [{ test: 'menu' }, { test: 'otherSource' }] },
        },
        { chain, baseline: null },
      );
      const { advice } = planRemotely(only, { reachableDevices }).plan;
      return advice.kind === 'test'
        ? [advice.next, ...advice.others].map(({ candidate }) => candidate.id)
        : [];
    };
    expect(ofClient([])).toEqual([]);
    expect(ofClient(['player', 'receiver'])).toEqual(['reseat link:L1']);
    expect(ofClient(['processor', 'projector'])).toEqual([]);
    const inWall = { ...cinema, links: cinema.links.map((each) => ({ ...each, route: 'inWall' as const })) };
    expect(ofClient(['player', 'receiver'], inWall)).toEqual([]);
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
    expect(kit[0]?.item).toEqual({ kind: 'cable', category: 'premiumHighSpeed', lengthM: 12.5 });
  });
});
