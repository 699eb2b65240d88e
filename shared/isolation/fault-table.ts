import { deviceRoles, linkConstructions } from '../contract/chain-names.ts';
import { effectTable, riskMin } from './effect-table.ts';
import type { ChainMode, DeviceMode, FailureMode, LinkMode } from './failure-modes.ts';
import { assumed, columns, practice, type Row } from './figures.ts';
import { reportWeight, usedHoursPerDay } from './reported.ts';
import { contentChances, patternChances, symptomChances, triggerChances } from './shown-chances.ts';

/** Columns: passive copper, active copper, active optical, twisted-pair extender. */
const construction = columns(linkConstructions);
/**
 * Relative weights before anything is known of the case: how much more often one part fails in one way than another
 * part in another. Only ratios count. No published field statistics were found: that cables and ports come first
 * and electronics last is the trade's experience, the sizes are ours.
 */
const linkWeights: Record<LinkMode, Row> = {
  bandwidth: practice(construction(3, 2.5, 1.5, 4)),
  contact: practice(construction(2.5, 2.5, 2.5, 2)),
  /** A coupler, wall plate or adapter in its way; see `coupler` for where one is likely. */
  coupling: assumed(construction(1, 0.7, 0.3, 0.5)),
  direction: practice(construction(0, 0.4, 0.6, 0.3)),
  linkPower: practice(construction(0, 1, 1.2, 1.5)),
};

/** Columns: source, switch, receiver, processor, extender, splitter, display. */
const role = columns(deviceRoles);
const deviceWeights: Record<DeviceMode, Row> = {
  portMode: practice(role(0.6, 0.8, 2, 0.8, 0.4, 0.6, 1.2)),
  edid: practice(role(0, 1.6, 1.6, 1.2, 1, 1.6, 0.8)),
  contentProtection: assumed(role(0.4, 1, 0.9, 0.8, 1, 1.4, 0.7)),
  firmware: assumed(role(0.9, 0.5, 0.9, 1.1, 0.3, 0.2, 0.6)),
  powerOrHeat: assumed(role(0.3, 0.4, 0.5, 0.6, 0.9, 0.6, 0.3)),
  /** Only where the device does process the picture. */
  processing: assumed(role(0.3, 0.8, 1, 1.2, 0.3, 0.3, 0.6)),
  /** Anything in its menu but the mode of a port: a picture or output setting, mostly after a reset or an update. */
  setting: practice(role(0.7, 0.2, 0.7, 0.7, 0.1, 0.1, 0.9)),
  latched: assumed(role(0.4, 0.5, 0.7, 0.5, 0.4, 0.3, 0.3)),
  fiveVolt: practice(role(0.7, 0, 0, 0, 0, 0, 0)),
  contentDependent: assumed(role(0.9, 0, 0, 0, 0, 0, 0)),
};

/** Of the chain as a whole, however many parts it has. */
const chainWeights: Record<ChainMode, Row> = {
  wakeOrder: assumed({ each: 0.4 }),
  controlSystem: assumed({ each: 0.4 }),
  /** One wire through all of them: which of them speaks out of turn, and which heeds it, no one of them shows alone. */
  controlBus: assumed({ each: 0.7 }),
  disturbance: assumed({ each: 0.35 }),
  earthLoop: assumed({ each: 0.2 }),
};

type Factors = Row<FailureMode>;
const modes = practice<FailureMode>;
/** What the answer to "what changed?" multiplies the weight of a mode by; a mode that isn't named keeps its weight. */
const changedFactors: Record<string, Factors> = {
  cable: modes({ bandwidth: 3, contact: 3, direction: 4, linkPower: 3 }),
  device: modes({
    portMode: 2.5,
    edid: 3,
    contentProtection: 3,
    fiveVolt: 1.5,
    contact: 1.5,
    wakeOrder: 2,
    controlSystem: 2,
    controlBus: 2,
  }),
  firmware: modes({ firmware: 6, edid: 2, contentProtection: 2, setting: 4, latched: 2, controlBus: 2 }),
  setting: modes({ portMode: 5, edid: 4, processing: 4, setting: 6, controlBus: 2, controlSystem: 2 }),
  move: modes({ contact: 5, direction: 3, linkPower: 2 }),
  buildingWork: modes({
    coupling: 3,
    contact: 4,
    bandwidth: 2,
    powerOrHeat: 1.5,
    disturbance: 3,
    earthLoop: 3,
  }),
  nothing: assumed<FailureMode>({
    contact: 1.3,
    powerOrHeat: 1.5,
    portMode: 0.6,
    direction: 0.3,
    setting: 0.6,
    latched: 1.5,
  }),
};
/** The same for "has it ever worked?". */
const historyFactors: Record<'neverWorked' | 'workedBefore', Factors> = {
  neverWorked: modes({
    coupling: 2,
    bandwidth: 3,
    portMode: 3,
    direction: 4,
    edid: 2,
    contact: 0.6,
    powerOrHeat: 0.3,
    setting: 2,
    latched: 0.3,
    wakeOrder: 2,
    controlSystem: 2,
  }),
  workedBefore: modes({ direction: 0.2 }),
};

/** What "only with one title, or one application" multiplies the weight of a mode by. A source is told by its ways. */
const onlyWithFactors: Record<'title' | 'application', Factors> = {
  title: assumed<FailureMode>({
    contentDependent: 5,
    contentProtection: 2,
    bandwidth: 1.5,
    contact: 0.3,
    powerOrHeat: 0.3,
  }),
  application: assumed<FailureMode>({
    contentDependent: 5,
    contentProtection: 3,
    firmware: 2,
    contact: 0.3,
    powerOrHeat: 0.3,
  }),
};

const weighing = {
  /** Share of "something outside the model" among all faults, before the case is known. */
  outsideShare: assumed({ share: 0.02 }),
  /** Weight of a component that is not on the way of the picture but on a parallel branch, against one that is. */
  besideThePath: practice({ edid: 0.6, contentProtection: 0.5, any: 0.1 }),
  /** Factor on the contact of a cable per year that it has lain, and the highest it comes to. */
  age: assumed({ contactPerYear: 0.06, highest: 2 }),
  /** Factor on a cable's coupler, wall plate or adapter, by how the cable runs. */
  coupler: practice({ free: 0.15, inConduit: 1, inWall: 1.5 }),
  /** Factor on a source's 5 V line with an active cable plugged into it. */
  activeCableOnSource: practice({ fiveVolt: 4 }),
  /** Factor of one audit finding, after its severity, on the modes it speaks of. */
  finding: practice({ mustFix: 5, shouldFix: 2.5, note: 1.2 }),
  /** Factor on a link's bandwidth by its headroom: less than none, under 10 %, 30 %, 100 % of the need, or more. */
  headroom: assumed({ short: 12, under10: 4, under30: 1.5, under100: 0.5, ample: 0.2 }),
  /** What an occurrence that is reported counts for against one that is watched. */
  reports: assumed({ weight: reportWeight }),
  /** Chance that a device's own log shows the fault. */
  logsShow: assumed({ chance: 0.4 }),
  /** Chance of the sources that show it being just these, by which of their ways a component lies on. */
  sources: practice({
    allAffectedOnly: 0.9,
    unaffectedToo: 0.06,
    /** For modes that depend on the data rate: the sources may send different formats. */
    unaffectedTooByRate: 0.25,
    someAffected: 0.03,
    none: 0.02,
  }),
  /**
   * The power that the likelihood of a result is raised to where it counts for less, 0..1 (a power prior: Ibrahim and
   * Chen 2000, Statistical Science 15). The method is published, the sizes are ours: half the decibans, or a tenth.
   */
  trust: assumed({ enteredLate: 0.5, earlierRound: 0.5, perhapsTwo: 0.1 }),
};

/** Minutes. Those of changes stand beside what a change does, in its catalogue. */
const effort = {
  menu: assumed({ setup: 2, restore: 1 }),
  installedSource: assumed({ setup: 3, restore: 1 }),
  broughtSource: assumed({ setup: 8, restore: 5 }),
  /** Opening a diary and explaining it; fetching and reading a log; leaving a change in; guiding a client; a drive. */
  overDays: assumed({ diary: 10, logs: 30, unattended: 30, remoteStep: 20, travel: 60 }),
  riskMin,
};

/** When looking further is no longer worth it. */
const planning = {
  /**
   * The chance at which a suspect counts as the culprit; and the factor by which the odds from before the first test
   * may be wrong. With 3, `npm run bench -- isolation` finds 97 % of culprits right where the figures are off by up to
   * 4; with 2, 96 %.
   */
  naming: assumed({ stopAt: 0.95, priorDoubt: 3 }),
  /** A watch that goes on after `cleared` is for this share of the risk: 1 % where it was 5 %. */
  furtherWatch: assumed({ riskShare: 0.2 }),
  /** Minutes that handing the case on is worth: two working days for the packet, the answer and the second visit. */
  escalation: assumed({ minutes: 960 }),
  /** Minutes of work that a day of waiting with the fault is worth to the client. */
  day: assumed({ minutes: 20 }),
  /** Hours a day that the chain is in use, and the fault can be seen. */
  use: assumed({ hoursPerDay: usedHoursPerDay }),
  /** Handing the case on: minutes of work, days until the answer, and the chance (0..1) that it names the cause. */
  handOver: assumed({ minutes: 60, days: 2, sureness: 0.5 }),
  /** Share of tickets with two faults at once that look like one, before anything is known. */
  twoFaults: assumed({ chance: 0.1 }),
  /** Minutes that one try of a trigger takes. */
  oneTry: assumed({ minutes: 2 }),
};

/** Every figure that isolation rests on, with its origin: section, row, column. */
export const faultTable = {
  linkWeights,
  deviceWeights,
  chainWeights,
  symptomChances,
  contentChances,
  patternChances,
  triggerChances,
  onlyWithFactors,
  changedFactors,
  historyFactors,
  weighing,
  effort,
  planning,
  ...effectTable,
};
export type FaultTable = typeof faultTable;
