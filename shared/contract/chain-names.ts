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

/** Of cables to have at hand, those that are not of passive copper. */
export const cableKitConstructions = ['activeCopper', 'activeOptical'] as const;

/** The cable categories of the HDMI compliance programme: 74.25 MHz, 340 MHz, 18 Gbit/s, 48 Gbit/s. */
export const knownCategories = ['standard', 'highSpeed', 'premiumHighSpeed', 'ultraHighSpeed'] as const;
export const linkCategories = [...knownCategories, 'unknown'] as const;

export const findingSeverities = ['mustFix', 'shouldFix', 'note'] as const;

/** The answers to what may not be known of a cable's end. */
export const threeStates = ['yes', 'no', 'unknown'] as const;

/**
 * How a picture says what its brightest parts are, beside SDR: HDR10 (SMPTE ST 2084 with static metadata, CTA-861-H 6.9),
 * HLG (ITU-R BT.2100), and metadata that follow the picture, by their standards.
 */
export const hdrKinds = ['hdr10', 'hlg', 'st2094-10', 'st2094-40'] as const;
export const dynamicRanges = ['sdr', ...hdrKinds] as const;
export const colorimetries = ['bt709', 'bt2020'] as const;
/** What a source asks of a display beside the picture: variable rate, low latency, quick media switching (HDMI 2.1, 10.3.2). */
export const pictureFeatures = ['vrr', 'allm', 'qms'] as const;

/**
 * Why something of a picture doesn't get past a device: it can't; its EDID doesn't admit it; it limits or replaces that of
 * what follows; not everything that follows takes it; there are too few bits, or too little blanking, for it.
 */
export const lossReasons = ['device', 'edid', 'limits', 'replaces', 'combines', 'bits', 'blanking'] as const;

/** Sound from a display back to what feeds it, over the picture's own cable (HDMI 1.4, 2.1). */
export const returnAudioKinds = ['none', 'arc', 'earc'] as const;

/** How the samples of a picture are sent. */
export const encodings = ['rgb', 'ycbcr444', 'ycbcr422', 'ycbcr420'] as const;
