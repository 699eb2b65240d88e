import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { patternKinds } from '../../shared/contract/triage-names.ts';
import { type FailureMode, failureModes, outside } from '../../shared/isolation/failure-modes.ts';
import type { Cause } from '../support/house/faults.ts';
import { toldOf } from '../support/house/told.ts';
import type { TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { openCasesApp, playCase } from './play.ts';
import { tunedCases } from './tuned.ts';

/** What ends wrong today. The list may only shrink: a case that ends well while it is named here fails. */
const knownMisses: readonly string[] = [];
const mostMisses = 0;

/** What a failure mode of the product is called where a house is made up. */
const causeOf: Record<Exclude<FailureMode, typeof outside>, Cause> = {
  bandwidth: 'bandwidth',
  contact: 'contact',
  direction: 'direction',
  linkPower: 'linkPower',
  portMode: 'portMode',
  edid: 'edid',
  contentProtection: 'contentProtection',
  firmware: 'firmware',
  powerOrHeat: 'heat',
  processing: 'processing',
  setting: 'reset',
  latched: 'latched',
  controlBus: 'controlBus',
  fiveVolt: 'fiveVolt',
  contentDependent: 'content',
  wakeOrder: 'wakeOrder',
  controlSystem: 'controlSystem',
  disturbance: 'disturber',
  earthLoop: 'earthLoop',
  coupling: 'wallPlate',
};

describe('the cases that are played', () => {
  it('have each pattern, each cause that the fault model knows, and one with two faults, which it does not know', () => {
    const faults = tunedCases.flatMap((played) => played.faults);
    const patterns = new Set(faults.map((fault) => toldOf(fault).pattern.kind));
    const causes = new Set(faults.map(({ cause }) => cause));
    expect(patternKinds.filter((kind) => !patterns.has(kind))).toEqual([]);
    const modes = failureModes.filter((mode) => mode !== outside);
    expect(modes.filter((mode) => !causes.has(causeOf[mode]))).toEqual([]);
    expect(tunedCases.some((played) => played.faults.length > 1)).toBe(true);
  });

  it('miss no more than they did', () => {
    expect(knownMisses.length).toBeLessThanOrEqual(mostMisses);
    expect(knownMisses.filter((name) => !tunedCases.some((played) => played.name === name))).toEqual([]);
  });
});

// Where there is a server too, each database has every other case: playing all twice takes minutes and shows no more.
const kinds = databaseKinds();
describe.each(kinds.map((kind, at) => ({ kind, at })))(
  'whoever does what the plan offers, over HTTP and the $kind database',
  ({ kind, at }) => {
    let test: TestApp;
    beforeAll(async () => {
      test = await openCasesApp(kind);
    });
    afterAll(() => test.close());

    it.each(tunedCases.filter((_, which) => which % kinds.length === at))(
      'ends at the truth, or hands over with what is wrong among the first suspects: $name',
      async (played) => {
        const { end, what, steps, minutes, told } = await playCase(test, played);
        process.stdout.write(`${played.name}: ${end}, ${what}; ${steps} steps, ${Math.round(minutes)} min\n`);
        const isHeld = end === 'truth' || end === 'handOver';
        expect(isHeld, `${end} ${what}\n${told.join('\n')}`).toBe(!knownMisses.includes(played.name));
      },
      // One that were given up halfway would move the next one's clock.
      300_000,
    );
  },
);
