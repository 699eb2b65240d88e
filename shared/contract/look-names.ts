// Lists that the triage machine and the screens need at run time, as in triage-names.ts.

/** How the brightness of a picture is coded; `static` and `dynamic` by what the metadata that goes with it does. */
export const hdrKinds = ['none', 'static', 'hybridLogGamma', 'dynamic'] as const;
/** What content protection a link has agreed on, as a device's page tells it. */
export const negotiatedProtections = ['none', '1.4', '2.2', '2.3'] as const;
/** What a device is set to do to the picture on its way: no loss, since it is meant. */
export const conversions = [
  'toneMapping',
  'scaling',
  'rateConversion',
  'colourConversion',
  'dynamicHdrInRgb',
] as const;
/** Whether the fault was there when a device's page was read. */
export const lookMoments = ['good', 'bad'] as const;
/** Does another display, or another source, show the fault at the same moment? */
export const witnessAnswers = ['shows', 'doesNotShow', 'cannotSay'] as const;
/** What a side can rest on. */
export const sideProofKinds = ['menu', 'trace', 'witness'] as const;

/** What a page tells of a signal. */
export const signalFields = [
  'resolution',
  'refreshHz',
  'bitsPerComponent',
  'encoding',
  'hdr',
  'protection',
  'linkGbps',
] as const;
