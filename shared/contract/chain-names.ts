// Lists that are needed at run time apart from the schemas made of them, as in triage-names.ts.

export const deviceRoles = [
  'source',
  'switch',
  'receiver',
  'processor',
  'extender',
  'splitter',
  'display',
] as const;

export const linkConstructions = [
  'passiveCopper',
  'activeCopper',
  'activeOptical',
  'twistedPairExtender',
] as const;

/** The cable categories of the HDMI compliance programme: 74.25 MHz, 340 MHz, 18 Gbit/s, 48 Gbit/s. */
export const knownCategories = ['standard', 'highSpeed', 'premiumHighSpeed', 'ultraHighSpeed'] as const;
export const linkCategories = [...knownCategories, 'unknown'] as const;

export const findingSeverities = ['mustFix', 'shouldFix', 'note'] as const;

/** The answers to what may not be known of a cable's end. */
export const threeStates = ['yes', 'no', 'unknown'] as const;

/** How the samples of a picture are sent. */
export const encodings = ['rgb', 'ycbcr444', 'ycbcr422', 'ycbcr420'] as const;
