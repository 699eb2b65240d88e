// Plain values apart from the schemas, as in chain-names.ts: screens hold to them before the API is asked.

/** The longest text of each kind that a person may type, in UTF-16 code units. */
export const longest = {
  /** One line: a name, a model, a level of firmware. */
  line: 200,
  /** Free text. */
  text: 4000,
  /** Free text that has to say something. */
  reason: 2000,
  /** A sentence or two beside an entry of a list. */
  note: 500,
  /** A few words: when it began, who somebody is to the client. */
  words: 100,
  address: 500,
  phone: 60,
  settingKey: 120,
  settingValue: 500,
  /** A stamp as a log writes it. */
  logTime: 100,
} as const;

export const shortest = {
  reason: 3,
  /** NIST SP 800-63B section 5.1.1.2: length over composition rules. */
  password: 10,
} as const;

/** Whether a text says enough for a reason. */
export const isReason = (text: string): boolean => text.trim().length >= shortest.reason;

/** Requests that second line makes at once. */
export const mostRequests = 20;

/** Kinds of change that an organisation may add. */
export const mostOwnChanges = 40;

/** What an organisation may set its figures to, both ends included. */
export const ranges = {
  risk: { min: 0.001, max: 0.5 },
  reopenDays: { min: 0, max: 3650 },
  /** The least is also what the database holds to, see the migration audit_log. */
  auditLogDays: { min: 90, max: 3650 },
  shortestCableM: { min: 0, max: 10 },
  reachM: { min: 0, max: 1000 },
  /** Of the reach of passive copper. */
  activeCopperReach: { min: 1, max: 20 },
  /** Of the reach that is counted on. */
  farthestReach: { min: 1, max: 3 },
  /** A part of what the category promises. */
  share: { min: 0.1, max: 1 },
  tmdsMHz: { min: 25, max: 600 },
  drawMa: { min: 0, max: 5000 },
  /** To make a change, or to put it back. */
  changeMin: { min: 0, max: 1440 },
  /** Certainty is left out on purpose: what is put in place can be bad too. */
  keepsAway: { min: 0.01, max: 0.99 },
} as const;
