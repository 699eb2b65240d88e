import { describe, expect, it } from 'vitest';
import { type Result, standingOf } from '../../shared/isolation/index.ts';
import { withDevice } from '../chain/build-chain.ts';
import { cinema, facts } from './cinema-case.ts';

/** Chance of what lies before the processor, over the chance of what lies behind it, after these results. */
function oddsUpstream(results: Result[], chain = cinema): number {
  const { model, chances } = standingOf({ ...facts, chain, results });
  const sum = (...keys: string[]) =>
    model.hypotheses.reduce(
      (total, { component }, at) => total + (keys.includes(component) ? (chances[at] ?? 0) : 0),
      0,
    );
  return sum('device:player', 'link:L1', 'device:receiver', 'link:L3') / sum('link:L4', 'device:projector');
}
const decibans = (results: Result[], chain = cinema): number =>
  10 * Math.log10(oddsUpstream(results, chain) / oddsUpstream([], chain));
const menu = (answer: 'stayed' | 'vanished'): Result[] => [{ kind: 'menu', deviceId: 'processor', answer }];
const withMenu = (
  menuSurvivesLossOfInput: 'yes' | 'no' | 'unknown',
  menuKeepsFormat: 'yes' | 'no' | 'unknown',
) => withDevice(cinema, 'processor', { menuSurvivesLossOfInput, menuKeepsFormat });

describe('a menu', () => {
  it('that vanished weighs next to nothing until both of its qualities are known', () => {
    for (const chain of [
      withMenu('unknown', 'unknown'),
      withMenu('yes', 'unknown'),
      withMenu('unknown', 'yes'),
    ])
      expect(Math.abs(decibans(menu('vanished'), chain))).toBeLessThan(1.5);
    expect(decibans(menu('vanished'), withMenu('yes', 'yes'))).toBeLessThan(-10);
    expect(decibans(menu('vanished'), withMenu('no', 'yes'))).toBeCloseTo(0, 6);
  });

  it('that stayed keeps its weight, whatever is known', () => {
    const known = decibans(menu('stayed'), withMenu('yes', 'yes'));
    expect(known).toBeGreaterThan(10);
    expect(decibans(menu('stayed'), withMenu('unknown', 'unknown'))).toBeGreaterThan(10);
  });
});

describe('a menu over a picture with something in it', () => {
  const tinted = (results: Result[]): number => {
    const chain = withMenu('unknown', 'unknown');
    const symptom = { ...facts.symptom, kind: 'wrongColour' as const };
    const { model, chances } = standingOf({ ...facts, symptom, chain, results });
    return model.hypotheses.reduce(
      (sum, { component }, at) =>
        sum + (component === 'link:L4' || component === 'device:projector' ? (chances[at] ?? 0) : 0),
      0,
    );
  };

  it('tells both ways, whatever the device does with its menu when its input goes', () => {
    expect(tinted(menu('vanished'))).toBeGreaterThan(1.5 * tinted([]));
    expect(tinted(menu('stayed'))).toBeLessThan(tinted([]) / 4);
  });
});

describe('readings', () => {
  const reading = (deviceId: string, at: 'receives' | 'sends', says: 'right' | 'wrong'): Result => ({
    kind: 'reading',
    deviceId,
    at,
    says,
  });
  const likeliest = (results: Result[]): string => {
    const { model, chances } = standingOf({ ...facts, results });
    const [best] = model.hypotheses
      .map(({ component }, at) => ({ component, chance: chances[at] ?? 0 }))
      .toSorted((a, b) => b.chance - a.chance);
    return best?.component ?? '';
  };

  it('speak for the device that receives right and sends wrong', () => {
    const results = [reading('processor', 'receives', 'right'), reading('processor', 'sends', 'wrong')];
    expect(likeliest(results)).toBe('device:processor');
  });

  it('speak for the link whose ends differ', () => {
    const results = [reading('receiver', 'sends', 'right'), reading('processor', 'receives', 'wrong')];
    expect(likeliest(results)).toBe('link:L3');
  });
});

describe('a witness', () => {
  const television = (shows: boolean): Result[] => [
    { kind: 'witness', deviceId: 'television', besideId: 'projector', shows },
  ];

  it('that shows it speaks for what both displays share, one that does not against it', () => {
    const odds = (results: Result[]) => {
      const { model, chances } = standingOf({ ...facts, results });
      const sum = (key: string) =>
        model.hypotheses.reduce(
          (total, { component }, at) => total + (component === key ? (chances[at] ?? 0) : 0),
          0,
        );
      return sum('link:L1') / sum('link:L4');
    };
    expect(odds(television(true))).toBeGreaterThan(5 * odds([]));
    expect(odds(television(false))).toBeLessThan(odds([]));
  });
});
