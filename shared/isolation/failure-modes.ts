import type { DeviceRole, LinkConstruction } from '../contract/chain.ts';
import { type Message, message } from '../message/message.ts';

export const linkModes = ['bandwidth', 'contact', 'coupling', 'direction', 'linkPower'] as const;
export const deviceModes = [
  'portMode',
  'edid',
  'contentProtection',
  'firmware',
  'powerOrHeat',
  'processing',
  'setting',
  'latched',
] as const;
export const sourceModes = ['fiveVolt', 'contentDependent'] as const;
/** What no device or cable explains alone: how all of them play together, and what works on them from outside. */
export const chainModes = ['wakeOrder', 'controlSystem', 'controlBus', 'disturbance', 'earthLoop'] as const;
export const outside = 'outside';

export type LinkMode = (typeof linkModes)[number];
export type DeviceMode = (typeof deviceModes)[number] | (typeof sourceModes)[number];
export type ChainMode = (typeof chainModes)[number];
/** How a component fails; `outside` stands for whatever the model doesn't know, and is never ruled out. */
export type FailureMode = LinkMode | DeviceMode | ChainMode | typeof outside;
export const failureModes: readonly FailureMode[] = [
  ...linkModes,
  ...deviceModes,
  ...sourceModes,
  ...chainModes,
  outside,
];

/** What to call a mode in a sentence, after "it is" or "suspected:". */
export const modeMessages: Readonly<Record<FailureMode, Message>> = {
  bandwidth: message('tooLittleMargin'),
  contact: message('looseContact'),
  coupling: message('couplerAtFault'),
  direction: message('laidWrongWayRound'),
  linkPower: message('tooLittleLinkPower'),
  portMode: message('portModeAtFault'),
  edid: message('edidHandlingAtFault'),
  contentProtection: message('contentProtectionAtFault'),
  firmware: message('firmwareAtFault'),
  powerOrHeat: message('powerOrHeatAtFault'),
  processing: message('processingAtFault'),
  setting: message('settingAtFault'),
  latched: message('latchedUntilRestart'),
  controlBus: message('controlBusAtFault'),
  fiveVolt: message('fiveVoltStartAtFault'),
  contentDependent: message('certainContentAtFault'),
  wakeOrder: message('wakeOrderAtFault'),
  controlSystem: message('controlSystemAtFault'),
  disturbance: message('disturbedFromOutside'),
  earthLoop: message('earthLoopAtFault'),
  outside: message('notInModel'),
};

/** Modes a cable can have at all: only electronics need power or have a direction. */
export function modesOfConstruction(construction: LinkConstruction): readonly LinkMode[] {
  return construction === 'passiveCopper' ? ['bandwidth', 'contact', 'coupling'] : linkModes;
}

/** Modes a device of a role can have at all. Processing is added where the device does process the picture. */
export function modesOfRole(role: DeviceRole): readonly DeviceMode[] {
  const ofAny = ['portMode', 'contentProtection', 'firmware', 'powerOrHeat', 'setting', 'latched'] as const;
  return role === 'source' ? [...ofAny, ...sourceModes] : [...ofAny, 'edid'];
}
