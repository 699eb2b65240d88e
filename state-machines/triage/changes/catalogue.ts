import type { ChangeKind } from '../../../shared/contract/triage.ts';
import type { careCodes, needCodes } from '../../../shared/message/codes/changes.ts';
import { enTerms } from '../../../shared/message/en/terms.ts';

/** Needs that say all by their code; those that depend on the place are added there. */
type Need = Exclude<keyof typeof needCodes, 'needCableAsLong' | 'needContentProtection'>;
export type Care = keyof typeof careCodes;

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
  cautions: Care[];
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
    cautions: ['careMains'],
  }),
  replaceCable: mayStay({
    target: 'link',
    needs: ['needSureCable'],
    cautions: ['careMains'],
  }),
  temporaryCable: entry({
    target: 'link',
    needs: ['needSureCable', 'needTapeOrCover'],
    cautions: ['careFloorCable', 'careMains'],
  }),
  otherSource: entry({
    target: 'device',
  }),
  sourceIntoProcessor: entry({
    target: 'device',
    needs: ['needSureCable'],
    cautions: ['careFloorCable', 'careMains'],
  }),
  bypassDevice: entry({
    target: 'device',
    needs: ['needCouplerOrLongerCable'],
    cautions: ['careMains'],
  }),
  unplugBranch: entry({
    target: 'link',
    cautions: ['careMains'],
  }),
  movePort: mayStay({
    target: 'port',
    cautions: ['careMains'],
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
    cautions: ['careMains'],
  }),
  moveProcessorToDisplay: entry({
    target: 'device',
    needs: ['needShortPassiveCable', 'needLongInputCable', 'needMainsNearDisplay'],
    cautions: ['careLadder', 'careProjectorLight', 'careLifting', 'careFloorCable', 'careMains'],
  }),
  substituteDisplay: entry({
    target: 'device',
    needs: ['needLikeDisplay'],
    cautions: ['careLadder', 'careProjectorLight', 'careLifting', 'careMains'],
  }),
  restoreSettings: correction({
    target: 'device',
    needs: ['needEarlierSettings'],
  }),
  updateFirmware: correction({
    target: 'device',
    canBeUndone: false,
    needs: ['needFirmwareFile', 'needTimeForUpdate'],
    cautions: ['careFirmware', 'careMains'],
  }),
};

/** A kind of change in plain words, as a technician would say it. */
export const changeLabel = (kind: ChangeKind): string => enTerms.changeKind[kind];
