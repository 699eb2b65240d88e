import { type Case, type PlanInput, plainCase } from '../../shared/isolation/index.ts';
import { changesOn } from '../bench/isolation-chains.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { untoldPattern } from '../support/untold-pattern.ts';

/** The home cinema with drop-outs on its projector, three an hour, only at high rates. */
export const cinema = homeCinema();
export const facts: Case = {
  ...plainCase(cinema, { kind: 'dropOuts', perHour: 3, lastsS: 2, ...untoldPattern }),
  affectedDisplays: ['projector'],
  content: 'highRateOnly',
  baseline: { mode: 'time', minutes: 60, occurrences: 3 },
};
export const input = (changes: Partial<PlanInput> = {}, known: Partial<Case> = {}): PlanInput => ({
  facts: { ...facts, ...known },
  changes: changesOn(cinema),
  here: { kit: null, people: 2, refused: [] },
  inPlace: null,
  ...changes,
});
