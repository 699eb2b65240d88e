import type { DeviceRole, LinkConstruction } from '../contract/chain.ts';

export const linkModes = ['bandwidth', 'contact', 'direction', 'linkPower'] as const;
export const deviceModes = [
  'portMode',
  'edid',
  'contentProtection',
  'firmware',
  'powerOrHeat',
  'processing',
] as const;
export const sourceModes = ['fiveVolt', 'contentDependent'] as const;
export const outside = 'outside';

export type LinkMode = (typeof linkModes)[number];
export type DeviceMode = (typeof deviceModes)[number] | (typeof sourceModes)[number];
/** How a component fails; `outside` stands for whatever the model doesn't know, and is never ruled out. */
export type FailureMode = LinkMode | DeviceMode | typeof outside;
export const failureModes: readonly FailureMode[] = [...linkModes, ...deviceModes, ...sourceModes, outside];

/** What to call a mode in a sentence, after "it is" or "suspected:". */
export const modeNames: Record<FailureMode, string> = {
  bandwidth: 'too little margin for the data rate',
  contact: 'a loose or intermittent contact',
  direction: 'laid the wrong way round',
  linkPower: 'too little power for its electronics',
  portMode: 'the mode a port is set to',
  edid: 'how it handles the EDID',
  contentProtection: 'content protection',
  firmware: 'its firmware',
  powerOrHeat: 'its power supply or heat',
  processing: 'its picture processing',
  fiveVolt: 'the start-up of its 5 V line',
  contentDependent: 'what it puts out with certain content',
  outside: 'something that is not in the model',
};

/** Modes a cable can have at all: only electronics need power or have a direction. */
export function modesOfConstruction(construction: LinkConstruction): readonly LinkMode[] {
  return construction === 'passiveCopper' ? ['bandwidth', 'contact'] : linkModes;
}

/** Modes a device of a role can have at all. Processing is added where the device does process the picture. */
export function modesOfRole(role: DeviceRole): readonly DeviceMode[] {
  if (role === 'source') return ['portMode', 'contentProtection', 'firmware', 'powerOrHeat', ...sourceModes];
  return ['portMode', 'edid', 'contentProtection', 'firmware', 'powerOrHeat'];
}
