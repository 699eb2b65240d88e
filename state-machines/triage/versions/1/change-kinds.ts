type Facts = { diagnostic: boolean; plainCorrection: boolean; canBeUndone: boolean; showsCulprit: boolean };

const diagnostic: Facts = {
  diagnostic: true,
  plainCorrection: false,
  canBeUndone: true,
  showsCulprit: true,
};
const mayStay: Facts = { ...diagnostic, diagnostic: false };
const correction: Facts = { ...mayStay, plainCorrection: true };

/** What version 1's catalogue said of each kind of change that it had. */
export const changeKinds = {
  reseat: correction,
  replaceCable: mayStay,
  temporaryCable: diagnostic,
  otherSource: diagnostic,
  sourceIntoProcessor: diagnostic,
  bypassDevice: diagnostic,
  unplugBranch: diagnostic,
  movePort: mayStay,
  raisePortMode: correction,
  disableProcessing: mayStay,
  limitInputBandwidth: diagnostic,
  limitOutputBandwidth: diagnostic,
  reissueHotPlug: { ...diagnostic, showsCulprit: false },
  insertSyncSwitch: mayStay,
  moveProcessorToDisplay: diagnostic,
  substituteDisplay: diagnostic,
  restoreSettings: correction,
  updateFirmware: { ...correction, canBeUndone: false },
} satisfies Record<string, Facts>;
export type ChangeKind = keyof typeof changeKinds;
