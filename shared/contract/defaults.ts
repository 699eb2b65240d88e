// Plain values apart from the schemas made with them (organisation.ts): the phone and all that computes takes them too.

/** The figures that hold for an organisation that set none of its own. Each may be set, see organisation.ts. */
export const organisationDefaults = {
  /** Chance taken of calling a fault cleared that is still there; common practice in testing, 5 %. */
  risk: 0.05,
  /** Assumed. */
  reopenDays: 30,
  /** Assumed: a year, so that what is noticed at its end can be followed to its start. */
  auditLogDays: 365,
  /** About 6 ft; common practice, no source. */
  shortestCableM: 1.8,
  /**
   * All assumed, but for 7.6 m (25 ft) of copper at 18 Gbit/s, which is common practice of the trade, and the 100 m of
   * twisted pair: the longest channel of structured cabling (ISO/IEC 11801-1, from memory). No category fixes a length:
   * a cable passes its test or doesn't.
   */
  budget: {
    passiveCopperReachM: { standard: 15, highSpeed: 10, premiumHighSpeed: 7.6, ultraHighSpeed: 5 },
    activeCopperReach: 2,
    activeOpticalReachM: 100,
    farthestReach: 1.5,
    uncertified: 0.8,
    siteFittedEnds: 0.8,
    perCoupler: 0.8,
    unknownCategory: 'highSpeed',
    extenderTmdsMHz: 340,
    twistedPairReachM: 100,
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
