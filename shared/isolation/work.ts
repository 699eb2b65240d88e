/**
 * What a plan may cost. A plan is pure, so that phone and server and two runs agree: its budget counts work and no time.
 * One unit is one figure of one hypothesis. Meant to keep a plan of the largest chain within 250 ms of one core of an
 * ordinary server; assumed. `npm run bench -- plan` prints time and units. Nothing is left out at 40 devices.
 */
export const workLimits = {
  /** Asking of each kind of change whether it applies at each place. */
  asking: 600_000,
  /** Weighing what each candidate tells of each hypothesis. */
  weighing: 600_000,
  /** Seeing whether a test's outcomes all lead to the same next step. */
  lookingAhead: 350_000,
  /** Comparing what options tell with each other: a multiplication each, of which some twenty are worth a unit. */
  comparing: 6_000_000,
} as const;

/** Units that asking whether one kind of change applies at one place is worth; measured. */
export const unitsPerAsk = 50;

/** At most so much is done for the choice of one next step: what is out of reach is weighed beside what is at hand. */
export const mostWork = workLimits.asking + 2 * workLimits.weighing + workLimits.lookingAhead;

/** Counts what was done, for whoever wants to know. */
export class WorkMeter {
  #units = 0;
  add(units: number): void {
    this.#units += units;
  }
  get units(): number {
    return this.#units;
  }
}
