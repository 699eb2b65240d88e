// Lists that the triage machine needs at run time. They stand apart from the schemas made of them, so that a phone which
// runs the machine does not load the schema library first.

/** What may be done to a chain on purpose. What each needs, risks and applies to is computed, see state-machines/. */
export const changeKinds = [
  'reseat',
  'replaceCable',
  'temporaryCable',
  'otherSource',
  'sourceIntoProcessor',
  'bypassDevice',
  'unplugBranch',
  'movePort',
  'raisePortMode',
  'disableProcessing',
  'limitInputBandwidth',
  'limitOutputBandwidth',
  'reissueHotPlug',
  'insertSyncSwitch',
  'moveProcessorToDisplay',
  'substituteDisplay',
  'restoreSettings',
  'updateFirmware',
] as const;

/** States that a ticket is worked on in, and that it comes back to when second line is done with it. */
export const workingStates = [
  'baseline',
  'reproduce',
  'locateSide',
  'substitute.ready',
  'substitute.declared',
  'substitute.applied',
  'substitute.judged',
  'culpritFound',
  'remedy',
  'verify',
] as const;
