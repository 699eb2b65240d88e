import type { CodeTable } from '../values.ts';

/** Why a client is not asked, by phone, to do something. */
export const phoneCodes = {
  phoneOutOfReach: {},
  phonePullsPlugs: {},
  phoneTakesSight: {},
  phoneAtMains: {},
  phoneTakesKit: {},
  phoneCantBeUndone: {},
  phoneTakesTechnician: {},
} as const satisfies CodeTable;
