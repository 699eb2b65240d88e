import { contentKinds, patternKinds, patternTriggers, symptomKinds } from '../contract/triage-names.ts';
import type { FailureMode } from './failure-modes.ts';
import { assumed, columns, practice, type Row } from './figures.ts';

type ByMode = Record<FailureMode, Row>;

/**
 * How a fault of each mode shows: chances along a row add up to 1. Columns: no picture, drop-outs, sparkles, no HDR,
 * wrong colour, wrong rate or resolution, content-protection message, sound only.
 */
const shown = columns(symptomKinds);
export const symptomChances: ByMode = {
  bandwidth: practice(shown(0.2, 0.4, 0.25, 0.02, 0.03, 0.05, 0.03, 0.02)),
  contact: practice(shown(0.25, 0.55, 0.12, 0.01, 0.02, 0.02, 0.02, 0.01)),
  coupling: practice(shown(0.25, 0.42, 0.2, 0.02, 0.04, 0.05, 0.01, 0.01)),
  direction: practice(shown(0.75, 0.1, 0.1, 0.01, 0.01, 0.01, 0.01, 0.01)),
  linkPower: assumed(shown(0.35, 0.45, 0.1, 0.01, 0.02, 0.02, 0.03, 0.02)),
  portMode: practice(shown(0.15, 0.05, 0.03, 0.36, 0.04, 0.35, 0.01, 0.01)),
  edid: practice(shown(0.15, 0.08, 0.01, 0.3, 0.06, 0.35, 0.02, 0.03)),
  contentProtection: practice(shown(0.25, 0.2, 0.01, 0.01, 0.01, 0.02, 0.45, 0.05)),
  firmware: assumed(shown(0.2, 0.35, 0.02, 0.1, 0.05, 0.13, 0.1, 0.05)),
  powerOrHeat: assumed(shown(0.3, 0.6, 0.03, 0.01, 0.01, 0.02, 0.01, 0.02)),
  processing: assumed(shown(0.1, 0.25, 0.08, 0.19, 0.13, 0.2, 0.01, 0.04)),
  setting: practice(shown(0.1, 0.04, 0.01, 0.29, 0.16, 0.35, 0.02, 0.03)),
  latched: assumed(shown(0.5, 0.08, 0.02, 0.1, 0.04, 0.1, 0.1, 0.06)),
  controlBus: assumed(shown(0.5, 0.38, 0.01, 0.02, 0.01, 0.03, 0.01, 0.04)),
  fiveVolt: practice(shown(0.6, 0.3, 0.01, 0.02, 0.02, 0.03, 0.01, 0.01)),
  contentDependent: assumed(shown(0.1, 0.4, 0.03, 0.16, 0.04, 0.15, 0.1, 0.02)),
  wakeOrder: assumed(shown(0.5, 0.1, 0.01, 0.12, 0.02, 0.13, 0.08, 0.04)),
  controlSystem: assumed(shown(0.6, 0.18, 0.01, 0.04, 0.02, 0.07, 0.02, 0.06)),
  disturbance: assumed(shown(0.12, 0.55, 0.29, 0.005, 0.005, 0.01, 0.01, 0.01)),
  earthLoop: assumed(shown(0.1, 0.45, 0.38, 0.01, 0.01, 0.02, 0.01, 0.02)),
  outside: assumed(shown(0.13, 0.13, 0.13, 0.13, 0.12, 0.12, 0.12, 0.12)),
};

/** With what content the fault shows; `notKnown` says nothing. */
const content = columns(contentKinds);
/** Columns: any content, only above a certain format, only what is protected. Rows add up to 1. */
export const contentChances: ByMode = {
  bandwidth: practice(content(0.22, 0.75, 0.03)),
  contact: assumed(content(0.75, 0.22, 0.03)),
  coupling: assumed(content(0.4, 0.57, 0.03)),
  direction: assumed(content(0.75, 0.23, 0.02)),
  linkPower: assumed(content(0.58, 0.39, 0.03)),
  portMode: practice(content(0.27, 0.71, 0.02)),
  edid: assumed(content(0.45, 0.5, 0.05)),
  contentProtection: practice(content(0.1, 0.1, 0.8)),
  firmware: assumed(content(0.45, 0.33, 0.22)),
  powerOrHeat: assumed(content(0.7, 0.27, 0.03)),
  processing: assumed(content(0.55, 0.42, 0.03)),
  setting: assumed(content(0.4, 0.57, 0.03)),
  latched: assumed(content(0.75, 0.15, 0.1)),
  controlBus: assumed(content(0.93, 0.05, 0.02)),
  fiveVolt: assumed(content(0.87, 0.1, 0.03)),
  contentDependent: assumed(content(0.1, 0.5, 0.4)),
  wakeOrder: assumed(content(0.75, 0.15, 0.1)),
  controlSystem: assumed(content(0.93, 0.05, 0.02)),
  disturbance: assumed(content(0.8, 0.17, 0.03)),
  earthLoop: assumed(content(0.85, 0.12, 0.03)),
  outside: assumed(content(0.4, 0.3, 0.3)),
};

const pattern = columns(patternKinds);
/**
 * How a fault of each mode comes. Columns: always, on a trigger, at random, in bursts, only when warm. Rows add up to 1.
 * Static faults are those of how something is set or laid, or of what is asked of it; what fails electrically comes
 * and goes.
 */
export const patternChances: ByMode = {
  bandwidth: assumed(pattern(0.15, 0.2, 0.35, 0.18, 0.12)),
  contact: practice(pattern(0.1, 0.22, 0.35, 0.25, 0.08)),
  coupling: assumed(pattern(0.25, 0.2, 0.3, 0.18, 0.07)),
  direction: assumed(pattern(0.75, 0.15, 0.06, 0.02, 0.02)),
  linkPower: assumed(pattern(0.15, 0.25, 0.3, 0.16, 0.14)),
  portMode: practice(pattern(0.7, 0.22, 0.05, 0.01, 0.02)),
  edid: practice(pattern(0.4, 0.5, 0.07, 0.02, 0.01)),
  contentProtection: practice(pattern(0.22, 0.5, 0.18, 0.05, 0.05)),
  firmware: assumed(pattern(0.15, 0.4, 0.3, 0.06, 0.09)),
  powerOrHeat: practice(pattern(0.05, 0.12, 0.18, 0.15, 0.5)),
  processing: assumed(pattern(0.35, 0.4, 0.17, 0.03, 0.05)),
  setting: practice(pattern(0.75, 0.2, 0.03, 0.01, 0.01)),
  latched: assumed(pattern(0.5, 0.3, 0.14, 0.03, 0.03)),
  controlBus: assumed(pattern(0.15, 0.6, 0.2, 0.03, 0.02)),
  fiveVolt: practice(pattern(0.12, 0.8, 0.04, 0.02, 0.02)),
  contentDependent: assumed(pattern(0.25, 0.55, 0.15, 0.03, 0.02)),
  wakeOrder: practice(pattern(0.1, 0.87, 0.01, 0.01, 0.01)),
  controlSystem: practice(pattern(0.13, 0.82, 0.03, 0.01, 0.01)),
  disturbance: assumed(pattern(0.05, 0.3, 0.35, 0.29, 0.01)),
  earthLoop: assumed(pattern(0.3, 0.15, 0.3, 0.22, 0.03)),
  outside: assumed(pattern(0.15, 0.25, 0.3, 0.15, 0.15)),
};

const trigger = columns(patternTriggers);
/**
 * What makes a fault of each mode come that comes on a trigger. Columns: switching on, a source change, the start of a
 * title, a change of HDR or rate, after standby, a cable that is touched, another appliance that switches, something
 * else. Rows add up to 1.
 */
export const triggerChances: ByMode = {
  bandwidth: assumed(trigger(0.05, 0.1, 0.2, 0.35, 0.05, 0.1, 0.05, 0.1)),
  contact: practice(trigger(0.04, 0.04, 0.03, 0.04, 0.04, 0.65, 0.06, 0.1)),
  coupling: assumed(trigger(0.05, 0.08, 0.12, 0.25, 0.05, 0.32, 0.03, 0.1)),
  direction: assumed(trigger(0.25, 0.2, 0.1, 0.15, 0.15, 0.05, 0.02, 0.08)),
  linkPower: assumed(trigger(0.25, 0.15, 0.05, 0.15, 0.2, 0.07, 0.05, 0.08)),
  portMode: assumed(trigger(0.03, 0.12, 0.2, 0.5, 0.03, 0.01, 0.01, 0.1)),
  edid: practice(trigger(0.22, 0.25, 0.08, 0.12, 0.22, 0.01, 0.02, 0.08)),
  contentProtection: practice(trigger(0.15, 0.2, 0.32, 0.1, 0.14, 0.01, 0.01, 0.07)),
  firmware: assumed(trigger(0.18, 0.18, 0.15, 0.16, 0.2, 0.01, 0.02, 0.1)),
  powerOrHeat: assumed(trigger(0.35, 0.05, 0.05, 0.1, 0.15, 0.05, 0.15, 0.1)),
  processing: assumed(trigger(0.05, 0.15, 0.2, 0.45, 0.05, 0.01, 0.01, 0.08)),
  setting: assumed(trigger(0.05, 0.2, 0.25, 0.4, 0.02, 0.01, 0.01, 0.06)),
  latched: assumed(trigger(0.2, 0.2, 0.08, 0.12, 0.32, 0.01, 0.02, 0.05)),
  controlBus: assumed(trigger(0.3, 0.3, 0.03, 0.02, 0.26, 0.01, 0.02, 0.06)),
  fiveVolt: practice(trigger(0.4, 0.15, 0.02, 0.03, 0.34, 0.01, 0.01, 0.04)),
  contentDependent: assumed(trigger(0.03, 0.07, 0.45, 0.35, 0.02, 0.01, 0.01, 0.06)),
  wakeOrder: practice(trigger(0.55, 0.06, 0.01, 0.01, 0.34, 0.01, 0.01, 0.01)),
  controlSystem: practice(trigger(0.45, 0.36, 0.02, 0.02, 0.1, 0.01, 0.01, 0.03)),
  disturbance: practice(trigger(0.03, 0.02, 0.01, 0.01, 0.02, 0.02, 0.8, 0.09)),
  earthLoop: assumed(trigger(0.1, 0.1, 0.03, 0.02, 0.04, 0.1, 0.5, 0.11)),
  outside: assumed(trigger(0.1, 0.1, 0.1, 0.1, 0.1, 0.02, 0.4, 0.08)),
};
