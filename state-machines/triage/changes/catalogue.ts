import type { ChangeKind } from '../../../shared/contract/triage.ts';
import type { cautionCodes } from '../../../shared/message/codes/cautions.ts';
import type { needCodes } from '../../../shared/message/codes/changes.ts';
import { enTerms } from '../../../shared/message/en/terms.ts';

/** Needs that say all by their code; those that depend on the place are added there. */
type Need = Exclude<keyof typeof needCodes, 'needCableAsLong' | 'needContentProtection'>;
export type Caution = keyof typeof cautionCodes;

/** What somebody who makes a change has to know, whatever the chain. */
export type CatalogueEntry = {
  /** Has to be put back; other kinds may stay once they cleared the fault. */
  diagnostic: boolean;
  /** Puts right what is wrong anyway: may stay whatever the retest says. */
  plainCorrection: boolean;
  /** Can be put back at all. */
  canBeUndone: boolean;
  /** A fault that it clears names a culprit. */
  showsCulprit: boolean;
  /** The kind of place that it is made to. */
  target: 'device' | 'port' | 'link';
  /** What to have at hand. */
  needs: Need[];
  cautions: Caution[];
};

type Facts = Partial<CatalogueEntry> & Pick<CatalogueEntry, 'target'>;

const entry = (facts: Facts): CatalogueEntry => ({
  diagnostic: true,
  plainCorrection: false,
  canBeUndone: true,
  showsCulprit: true,
  needs: [],
  cautions: [],
  ...facts,
});
const mayStay = (facts: Facts): CatalogueEntry => entry({ diagnostic: false, ...facts });
const correction = (facts: Facts): CatalogueEntry => mayStay({ plainCorrection: true, ...facts });

/** The kinds of change there are. Common practice of the trade, no source; their minutes are figures of the fault table. */
export const changeCatalogue: Record<ChangeKind, CatalogueEntry> = {
  reseat: correction({
    target: 'link',
    cautions: ['cautionMains'],
  }),
  replaceCable: mayStay({
    target: 'link',
    needs: ['needSureCable'],
    cautions: ['cautionMains'],
  }),
  temporaryCable: entry({
    target: 'link',
    needs: ['needSureCable', 'needTapeOrCover'],
    cautions: ['cautionCableAcrossFloor', 'cautionMains'],
  }),
  otherSource: entry({
    target: 'device',
  }),
  sourceIntoProcessor: entry({
    target: 'device',
    needs: ['needSureCable'],
    cautions: ['cautionCableAcrossFloor', 'cautionMains'],
  }),
  bypassDevice: entry({
    target: 'device',
    needs: ['needCouplerOrLongerCable'],
    cautions: ['cautionMains'],
  }),
  unplugBranch: entry({
    target: 'link',
    cautions: ['cautionMains'],
  }),
  movePort: mayStay({
    target: 'port',
    cautions: ['cautionMains'],
  }),
  raisePortMode: correction({
    target: 'port',
  }),
  disableProcessing: mayStay({
    target: 'device',
  }),
  limitInputBandwidth: entry({
    target: 'device',
  }),
  limitOutputBandwidth: entry({
    target: 'device',
  }),
  reissueHotPlug: entry({
    target: 'device',
    showsCulprit: false,
  }),
  insertSyncSwitch: mayStay({
    target: 'link',
    needs: ['needSyncSwitch', 'needShortCable', 'needItsPowerSupply'],
    cautions: ['cautionMains'],
  }),
  moveProcessorToDisplay: entry({
    target: 'device',
    needs: ['needShortPassiveCable', 'needLongInputCable', 'needMainsNearDisplay'],
    cautions: ['cautionDisplay', 'cautionLifting', 'cautionCableAcrossFloor', 'cautionMains'],
  }),
  substituteDisplay: entry({
    target: 'device',
    needs: ['needLikeDisplay'],
    cautions: ['cautionDisplay', 'cautionLifting', 'cautionMains'],
  }),
  restoreSettings: correction({
    target: 'device',
    needs: ['needEarlierSettings'],
  }),
  updateFirmware: correction({
    target: 'device',
    canBeUndone: false,
    needs: ['needFirmwareFile', 'needTimeForUpdate'],
    cautions: ['cautionFirmwareUpdate', 'cautionMains'],
  }),
};

/** A kind of change in plain words, as a technician would say it. */
export const changeLabel = (kind: ChangeKind): string => enTerms.changeKind[kind];
