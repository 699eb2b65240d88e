import type { ChangeKind } from '../contract/change.ts';
import type { DeviceMode, FailureMode } from './failure-modes.ts';
import { assumed, practice, type Row } from './figures.ts';

/**
 * Which parts a change does something to, seen from its target. `ends`: the devices a link joins, the links at a
 * device. `between`: the stretch that the change takes out of the way of the picture. `anywhere`: all of the chain.
 */
export type Reach = 'target' | 'ends' | 'between' | 'upstream' | 'downstream' | 'anywhere';
/** `any` holds for every mode that has no figure of its own. */
export type EffectColumn = FailureMode | 'any';
export type EffectRow = Row<EffectColumn>;
/** Something done to tell suspects apart. */
export type TestKind = ChangeKind;

const cablePut = {
  target: practice({ contact: 0.97, bandwidth: 0.93, direction: 0.97, linkPower: 0.93 }),
  ends: assumed({ fiveVolt: 0.3, contentProtection: 0.05, edid: 0.05, portMode: 0.02 }),
};
const bandwidthRelief = assumed({
  bandwidth: 0.88,
  portMode: 0.8,
  linkPower: 0.2,
  contact: 0.12,
  contentDependent: 0.3,
  edid: 0.1,
});

/**
 * Chance that a fault of a mode stays away while the change is in place, because of the change. Certainty (1) is
 * left out on purpose: a spare cable can be bad too.
 */
const effects: Record<TestKind, Partial<Record<Reach, EffectRow>>> = {
  reseat: {
    target: practice({ contact: 0.6 }),
    ends: assumed({ contact: 0.6, contentProtection: 0.08, edid: 0.08 }),
  },
  replaceCable: cablePut,
  temporaryCable: cablePut,
  sourceIntoProcessor: {
    between: practice({ any: 0.96 }),
    target: assumed({ fiveVolt: 0.3, contentProtection: 0.1 }),
  },
  bypassDevice: { target: practice({ any: 0.96 }), ends: assumed({ any: 0.4 }) },
  unplugBranch: {
    between: practice({ any: 0.95 }),
    upstream: assumed({ edid: 0.35, contentProtection: 0.25 }),
  },
  movePort: {
    target: assumed({ portMode: 0.8, edid: 0.15, powerOrHeat: 0.05 }),
    ends: assumed({ contact: 0.5 }),
  },
  raisePortMode: { target: practice({ portMode: 0.93 }) },
  disableProcessing: { target: practice({ processing: 0.93, edid: 0.75, firmware: 0.25 }) },
  limitInputBandwidth: {
    target: assumed({ portMode: 0.8, processing: 0.2 }),
    upstream: bandwidthRelief,
    downstream: bandwidthRelief,
  },
  limitOutputBandwidth: {
    target: assumed({ portMode: 0.6, processing: 0.2, contentDependent: 0.3 }),
    downstream: bandwidthRelief,
  },
  reissueHotPlug: {
    anywhere: assumed({ edid: 0.35, contentProtection: 0.4, fiveVolt: 0.3, firmware: 0.15, contact: 0.05 }),
  },
  insertSyncSwitch: {
    target: assumed({ bandwidth: 0.35, contact: 0.4, linkPower: 0.4 }),
    ends: practice({ edid: 0.5, contentProtection: 0.35, firmware: 0.25 }),
    upstream: practice({ fiveVolt: 0.6 }),
  },
  moveProcessorToDisplay: { between: practice({ any: 0.95 }) },
  substituteDisplay: { target: practice({ any: 0.96 }), ends: assumed({ contact: 0.4 }) },
  restoreSettings: { target: practice({ portMode: 0.7, edid: 0.7, processing: 0.8 }) },
  updateFirmware: {
    target: assumed({ firmware: 0.85, edid: 0.25, processing: 0.2, contentProtection: 0.15 }),
  },
  otherSource: { between: practice({ any: 0.96 }) },
};

const minutes = (setup: number, restore: number) => assumed({ setup, restore });

/** Minutes to make a change and to put it back, and of a cable that has to be pulled through a conduit. */
const changeMinutes: Record<TestKind | 'pullThroughConduit', Row<'setup' | 'restore'>> = {
  reseat: minutes(5, 0),
  replaceCable: minutes(15, 10),
  temporaryCable: minutes(20, 10),
  otherSource: minutes(5, 2),
  sourceIntoProcessor: minutes(15, 10),
  bypassDevice: minutes(15, 15),
  unplugBranch: minutes(5, 5),
  movePort: minutes(5, 5),
  raisePortMode: minutes(5, 5),
  disableProcessing: minutes(10, 10),
  limitInputBandwidth: minutes(10, 10),
  limitOutputBandwidth: minutes(10, 10),
  reissueHotPlug: minutes(5, 0),
  insertSyncSwitch: minutes(15, 10),
  moveProcessorToDisplay: minutes(45, 30),
  substituteDisplay: minutes(30, 20),
  restoreSettings: minutes(15, 15),
  updateFirmware: minutes(45, 0),
  pullThroughConduit: minutes(60, 60),
};

/** Chance that a fault stays away after a change that has nothing to do with it, just because things were moved. */
const coincidence = assumed({ contact: 0.03, other: 0.01 });

/**
 * Chance that a device's own menu stays in the picture when the fault comes, by where the fault lies. Some devices
 * drop their own output too when their input goes away, hence less than 1 upstream.
 */
const menuStays = {
  upstream: practice({ any: 0.92 }),
  downstream: practice({ any: 0.03 }),
  apart: assumed({ any: 0.5 }),
  own: assumed({
    portMode: 0.8,
    edid: 0.65,
    contentProtection: 0.5,
    processing: 0.5,
    firmware: 0.4,
    powerOrHeat: 0.1,
    fiveVolt: 0.6,
    contentDependent: 0.9,
  } satisfies Record<DeviceMode, number>),
  /** One occurrence is read wrongly. */
  misread: assumed({ any: 0.02 }),
};

/** What facts of an EDID or a log multiply the likelihood of a mode by, at the component they were read at and next to it. */
const facts = {
  edidReadFailed: practice({ edid: 4, contact: 3, fiveVolt: 3, linkPower: 2 }),
  edidDiffers: practice({ edid: 6, portMode: 1.5 }),
  authenticationFailed: practice({ contentProtection: 6, contact: 1.5, bandwidth: 1.5 }),
  linkFellBack: practice({ bandwidth: 6, contact: 2, portMode: 1.5 }),
  hotPlugDropped: practice({ contact: 4, powerOrHeat: 2.5, linkPower: 2, fiveVolt: 2, edid: 1.5 }),
  syncLost: assumed({ contact: 1.5, bandwidth: 1.5 }),
  restarted: practice({ powerOrHeat: 6, firmware: 4 }),
  formatChanged: assumed({ contentDependent: 3, processing: 2, edid: 2 }),
};
export type FactKind = keyof typeof facts;

export const effectTable = { effects, changeMinutes, coincidence: { stays: coincidence }, menuStays, facts };
