import type { ChangeKind } from '../contract/change.ts';
import { changeKinds } from '../contract/triage-names.ts';
import { changeCatalogue, ofEachChange } from './change-catalogue.ts';
import { minutes } from './change-facts.ts';
import type { DeviceMode } from './failure-modes.ts';
import { assumed, practice } from './figures.ts';

/** Something done to tell suspects apart. */
export type TestKind = ChangeKind;

/** Minutes to make a change and to put it back, and of a cable that has to be pulled through a conduit. */
const changeMinutes = {
  ...ofEachChange((facts) => facts.minutes),
  pullThroughConduit: minutes(60, 60),
};

/** What a mishap is worth on average, by kind of change, where it is worth anything. */
export const riskMin = assumed(
  Object.fromEntries(
    changeKinds.flatMap((kind) => {
      const worth = changeCatalogue[kind].riskMin;
      return worth === null ? [] : [[kind, worth]];
    }),
  ),
);

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
    setting: 0.65,
    latched: 0.4,
    fiveVolt: 0.6,
    contentDependent: 0.9,
  } satisfies Record<DeviceMode, number>),
  /** Upstream, of a device whose menu was seen to stay when its input was unplugged. */
  upstreamSurvives: practice({ any: 0.98 }),
  /**
   * Share of the menus that vanish whatever is at fault, while it is not known what a menu does by itself: 0.75 makes
   * one that vanished worth a deciban, and leaves one that stayed its weight.
   */
  notKnown: assumed({ any: 0.75 }),
  /** One occurrence is read wrongly. */
  misread: assumed({ any: 0.02 }),
};

/**
 * Chance that a device's page shows something wrong in what it receives or sends while the fault is there, by where the
 * fault lies. What follows a device can tell it to send something else, by its EDID or what it takes.
 */
const readings = {
  upstream: practice({ any: 0.95 }),
  receives: assumed({ edid: 0.5, portMode: 0.5, contentProtection: 0.4, fiveVolt: 0.1, any: 0.1 }),
  sends: practice({ any: 0.9 }),
  downstream: practice({ edid: 0.6, portMode: 0.5, contentProtection: 0.4, any: 0.03 }),
  apart: assumed({ edid: 0.3, any: 0.1 }),
  outside: assumed({ any: 0.5 }),
};

/**
 * Chance that another display or source shows the fault at the same moment, if the fault lies on the way that both
 * share, on the other one's own way, in all parts together, or outside the model. Formats can differ, so that a part at its limit shows with
 * one and not with the other.
 */
const witnesses = {
  shared: assumed({ bandwidth: 0.6, portMode: 0.6, processing: 0.7, contentDependent: 0.6, any: 0.92 }),
  own: practice({ any: 0.04 }),
  apart: assumed({ any: 0.2 }),
  /** What all parts have in common reaches the one as it does the other; what disturbs from outside need not. */
  whole: assumed({ disturbance: 0.5, earthLoop: 0.5, any: 0.8 }),
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
  /** What a socket was found to be set to, by a look in the device's menu; and another setting than it should be. */
  portSetLow: practice({ portMode: 10 }),
  portSetRight: practice({ portMode: 0.1 }),
  settingWrong: assumed({ portMode: 4, edid: 4, processing: 4 }),
};
export type FactKind = keyof typeof facts;

/** Facts that logs tell. One cause shows as several of them, so that the strongest alone counts. */
export const factsFromLogs = [
  'edidReadFailed',
  'authenticationFailed',
  'linkFellBack',
  'hotPlugDropped',
  'syncLost',
  'restarted',
  'formatChanged',
] as const satisfies readonly FactKind[];
export type FactFromLogs = (typeof factsFromLogs)[number];

export const effectTable = {
  effects: ofEachChange((facts) => facts.effects),
  provocations: ofEachChange((facts) => facts.provokes),
  changeMinutes,
  coincidence: { stays: coincidence },
  menuStays,
  readings,
  witnesses,
  facts,
};
