// How often what happens on a walk, all of it assumed: often enough that a thousand walks meet everything.

/** Chances, a step: something comes in between; another offer than the advised one is taken. */
export const interruptedShare = 0.07;
export const wandersShare = 0.1;
/** Chances: an observer who sees wrongly, a verdict given by hand, a case that second line sends back. */
export const poorObserverShare = 0.2;
export const byHandShare = 0.1;
export const sentBackShare = 0.4;
/** The chance, a turn, that nobody ever comes back to a ticket that waits. */
export const staysWaitingShare = 0.3;
/** Chances: a closed ticket is heard of again; a technician makes a change of their own choice, each time one could be. */
export const heardAgainShare = 0.3;
export const ownChangeShare = 0.3;
/** The chance that a walk wants to see something that few meet. */
export const wishesShare = 0.75;
/** The chance, a turn, that somebody does what a walk wants to see, where it is taken. */
export const grantedShare = 0.6;
/** What has several answers, each of which is to be met, is wished for so many times as often. */
export const wishesForAnswers = 3;
/** Kinds of change that a plan seldom comes to; half of the walks want to see one of them. */
export const rareChanges = [
  'clearVents',
  'warmByUse',
  'otherSupply',
  'disconnectDisturber',
  'updateFirmware',
  'movePort',
  'unplugBranch',
  'moveProcessorToDisplay',
  'sourceIntoProcessor',
  'oneSocketCircuit',
  'otherChange',
  'reissueHotPlug',
  'insertSyncSwitch',
] as const;
/** Shares: organisations with kinds of change of their own; with firmware that is older than they want. */
export const ownKindsShare = 0.2;
export const oldFirmwareShare = 0.1;
/** Chances: the client has a diary from the start; they report what they notice. */
export const diaryShare = 0.3;
export const reportsShare = 0.7;
export const mostReports = 6;
