/** What a line of a log means to who looks for the fault; `ordinary` is of no interest to them. */
export type LineClass =
  | 'hotPlugLost'
  | 'hotPlugBack'
  | 'keysFailed'
  | 'repeaterFailed'
  | 'keysAgreed'
  | 'lockLost'
  | 'lockFound'
  | 'supplyLost'
  | 'supplyBack'
  | 'trainingFailed'
  | 'trained'
  | 'rateLowered'
  | 'rateRaised'
  | 'edidFailed'
  | 'restartPower'
  | 'restartWatchdog'
  | 'restartPerson'
  | 'restartUpdate'
  | 'restartHeat'
  | 'restartCrash'
  | 'ordinary';

/** Made-up lines by what they mean, each as a device would write it after its stamp. */
export type LinesByClass = Record<LineClass, readonly string[]>;
