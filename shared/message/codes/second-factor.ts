import type { CodeTable } from '../values.ts';

/** What is said of a second factor: at sign-in, and where a member turns it on. */
export const secondFactorCodes = {
  secondFactorNeeded: {},
  codeWrong: {},
  codesDelayed: { minutes: 'minutes' },
  passwordDelayed: { minutes: 'minutes' },
  secondStepOver: {},
  secondFactorWanted: {},
  secondFactorStays: {},
  appProposalOld: {},
  appThereAlready: {},
  noSecondFactor: {},
} as const satisfies CodeTable;
