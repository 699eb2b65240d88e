import { describe, expect, it } from 'vitest';
import type { Place } from '../../shared/contract/chain.ts';
import type { ChangeKind } from '../../shared/contract/change.ts';
import { symptom } from '../../shared/contract/triage.ts';
import { type ChangeOption, type PlanInput, plainCase, planNext } from '../../shared/isolation/index.ts';
import { cable, chainOf, display, processor, source } from '../chain/build-chain.ts';

/** A source, so many processors in a row, and a display. */
function rowOf(processors: number): PlanInput {
  const between = Array.from({ length: processors }, (_, at) => processor(`p${at}`));
  const devices = [source('player'), ...between, display('projector')];
  const links = devices
    .slice(1)
    .map(({ id }, at) => cable(`${devices[at]?.id}.out1`, `${id}.in1`, { id: `L${at}` }));
  const kinds: ChangeKind[] = ['reseat', 'replaceCable'];
  const changes = links.flatMap(({ id }) =>
    kinds.map((kind): ChangeOption => {
      const target: Place = { kind: 'link', linkId: id };
      return { kind, target, setupMin: 5, restoreMin: 5 };
    }),
  );
  return {
    facts: plainCase(chainOf(devices, links), symptom.parse({ kind: 'dropOuts', perHour: 3 })),
    changes,
    here: { kit: null, people: 1, refused: [] },
    inPlace: null,
  };
}

describe('a plan with a budget', () => {
  it('weighs everything in a chain of an ordinary size', () => {
    expect(planNext(rowOf(6)).cutShort).toBeNull();
  });

  it('answers for a chain of 200 devices with the best found, and says what it left out', () => {
    const { advice, cutShort } = planNext(rowOf(198));
    expect(cutShort?.of).toBe(198 + 1 + 2 * 199 + 1);
    expect(cutShort?.left).toBeGreaterThan(0);
    if (advice.kind !== 'test') throw new Error('no test is advised');
    // Of all there is, a menu near the middle of what is suspected halves it best.
    expect(advice.next.candidate.action.kind).toBe('menu');
  });

  it('says the same each time, however little it may weigh', () => {
    const input = rowOf(20);
    const whole = planNext({ ...input, terms: { work: 10_000_000 } });
    const cut = planNext({ ...input, terms: { work: 1 } });
    expect(cut.cutShort?.left).toBeGreaterThan(0);
    expect(planNext({ ...input, terms: { work: 1 } })).toEqual(cut);
    expect(whole.cutShort).toBeNull();
    expect([whole.advice.kind, cut.advice.kind]).toEqual(['test', 'test']);
  });
});
