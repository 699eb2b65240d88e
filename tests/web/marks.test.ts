import { describe, expect, it } from 'vitest';
import { marksAt, placesByWeight, signedLinks, usedMarks, weightsOf } from '../../src/web/drawing/marks.ts';
import { homeCinema } from '../chain/build-chain.ts';

describe('the marks on a drawing', () => {
  const chain = homeCinema();
  const [link] = chain.links;
  if (link === undefined) throw new Error('a cable is needed');
  const at = { kind: 'link', linkId: link.id } as const;
  const device = { kind: 'device', deviceId: link.to.deviceId } as const;
  const port = { kind: 'port', ...link.to } as const;

  it('says at each place what is known there, with its figures, what matters most first', () => {
    const marks = {
      suspects: [
        { place: device, chance: 0.2 },
        { place: port, chance: 0.5 },
        { place: at, chance: null },
      ],
      culprit: device,
      evidence: [at, at, port],
    };
    expect(marksAt(marks, 'device', link.to.deviceId)).toEqual([
      { mark: 'culprit', chance: null, count: 1 },
      { mark: 'suspect', chance: 0.5, count: 2 },
      { mark: 'evidence', chance: null, count: 1 },
    ]);
    expect(marksAt(marks, 'link', link.id)).toEqual([
      { mark: 'suspect', chance: null, count: 1 },
      { mark: 'evidence', chance: null, count: 2 },
    ]);
    expect(usedMarks(marks)).toEqual(['culprit', 'suspect', 'evidence']);
    expect([...signedLinks(chain, marks)]).toEqual([link.id]);
  });

  it('weighs the likelier suspect more, and both ends of a cable', () => {
    const other = chain.links.find(({ from, to }) =>
      [from.deviceId, to.deviceId].every((id) => id !== link.from.deviceId && id !== link.to.deviceId),
    );
    const suspects = [
      ...(other === undefined ? [] : [{ place: { kind: 'link', linkId: other.id } as const, chance: 0.1 }]),
      { place: at, chance: 0.6 },
    ];
    expect(placesByWeight({ suspects })[0]).toEqual(at);
    const weights = weightsOf(chain, { suspects });
    expect(weights.get(link.from.deviceId)).toBe(weights.get(link.to.deviceId));
    expect(weights.get(link.from.deviceId)).toBeGreaterThan(weights.get(other?.from.deviceId ?? '') ?? 0);
  });
});
