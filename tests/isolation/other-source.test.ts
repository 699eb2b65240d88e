import { describe, expect, it } from 'vitest';
import { type Chain, wantedFormat } from '../../shared/contract/chain.ts';
import { type Case, plainCase, type Result } from '../../shared/isolation/case.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import { faultModelOf } from '../../shared/isolation/hypotheses.ts';
import { posteriorOf } from '../../shared/isolation/posterior.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { untoldPattern } from '../support/untold-pattern.ts';

const quiet: Result = {
  kind: 'test',
  test: 'otherSource',
  target: { kind: 'device', deviceId: 'streamer' },
  watch: { mode: 'time', minutes: 120, occurrences: 0 },
};
const format = {
  widthPx: 3840,
  heightPx: 2160,
  refreshHz: 60,
  bitsPerComponent: 10,
  encoding: 'rgb',
} as const;
/** The highest format, by whom it is wanted of; null where nobody says what is wanted. */
const wantedOf = (sourceIds: string[] | null): Chain['wantedFormats'] =>
  sourceIds === null ? [] : [wantedFormat.parse({ ...format, sourceIds })];

/** Chance that a cable which both sources pass has this at fault, in a case that the player alone shows. */
function passedShare(mode: string, sourceIds: string[] | null, results: Result[]): number {
  const facts: Case = {
    ...plainCase(homeCinema(), { kind: 'dropOuts', perHour: 3, lastsS: 2, ...untoldPattern }),
    chain: { ...homeCinema(), wantedFormats: wantedOf(sourceIds) },
    affectedSources: ['player'],
    affectedDisplays: ['projector'],
    baseline: { mode: 'time', minutes: 60, occurrences: 3 },
    results,
  };
  const model = faultModelOf(facts, faultTable);
  const chances = posteriorOf(model);
  const passed = ['link:L3', 'link:L4', 'link:L5'];
  return model.hypotheses.reduce(
    (sum, each, at) => sum + (each.mode === mode && passed.includes(each.component) ? (chances[at] ?? 0) : 0),
    0,
  );
}
const leftOf = (mode: string, sourceIds: string[] | null): number =>
  passedShare(mode, sourceIds, [quiet]) / passedShare(mode, sourceIds, []);

describe('another source, with which the fault stays away', () => {
  it('acquits what both pass only where it sends as much', () => {
    const asMuch = leftOf('bandwidth', ['player', 'streamer']);
    const less = leftOf('bandwidth', ['player']);
    const notKnown = leftOf('bandwidth', null);
    expect(asMuch).toBeLessThan(0.1);
    expect(notKnown).toBeGreaterThan(2 * asMuch);
    expect(less).toBeGreaterThan(notKnown);
  });

  it('acquits what needs no format either way', () => {
    expect(leftOf('contact', ['player'])).toBeLessThan(0.2);
  });
});
