import type { CodeTable } from '../values.ts';

/** What the 5 V line of a cable has to give. */
export const powerCodes = {
  /** The parts are clauses: what is supplied, what either takes, and what is left. */
  linkUnderfed: { cable: 'place', budget: 'message' },
  fiveVoltBudget: { supply: 'message', sink: 'message', cable: 'message', balance: 'message' },
  fiveVoltOpticalOnSource: { budget: 'message', offered: 'milliampere' },
  fiveVoltFallsShort: { budget: 'message', cable: 'place' },
  suppliesAtLeast: { source: 'device', supply: 'milliampere' },
  supplies: { source: 'device', supply: 'milliampere' },
  mayTake: { sink: 'device', draw: 'milliampere' },
  takes: { sink: 'device', draw: 'milliampere' },
  cableTakes: { draw: 'milliampere' },
  cableTakesAbout: { construction: 'construction', draw: 'milliampere' },
  cableHasOwnSupply: {},
  cableTakesNothing: {},
  currentToSpare: { left: 'milliampere' },
  currentShort: { short: 'milliampere' },
  powerCable: {},
} as const satisfies CodeTable;
