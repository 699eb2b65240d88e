// Plain values apart from the schemas made with them (organisation.ts): the phone and all that computes takes them too.

/** Metres of passive copper that pass 18 Gbit/s (25 ft); common practice of the trade, no source. */
const usualCopperM = 7.6;

/** The figures that hold for an organisation that set none of its own. Each may be set, see organisation.ts. */
export const organisationDefaults = {
  /** Chance taken of calling a fault cleared that is still there; common practice in testing, 5 %. */
  risk: 0.05,
  /** Assumed. */
  reopenDays: 30,
  /** About 6 ft; common practice, no source. */
  shortestCableM: 1.8,
  longestCopperM: usualCopperM,
  /** All assumed, but for `usualCopperM`. No category fixes a length: a cable passes its test or doesn't. */
  budget: {
    passiveCopperReachM: {
      standard: 15,
      highSpeed: 10,
      premiumHighSpeed: usualCopperM,
      ultraHighSpeed: 5,
      unknown: usualCopperM,
    },
    activeCopperReach: 2,
    activeOpticalReachM: 100,
    uncertified: 0.8,
    siteFittedEnds: 0.8,
    unknownCategory: 'highSpeed',
    extenderTmdsMHz: 340,
  },
  /** All assumed but for passive copper, which has no electronics; extenders bring a supply of their own. */
  cableDrawMa: {
    passiveCopper: 0,
    activeCopper: 25,
    activeOptical: 100,
    twistedPairExtender: 0,
  },
  timeZone: 'UTC',
} as const;
