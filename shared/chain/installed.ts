import type { Chain, Device, Link, Place } from '../contract/chain.ts';
import type { InstalledPart } from '../contract/installed.ts';

/** Where in a chain a part was put in. */
export const placeOfPart = (part: InstalledPart): Place =>
  part.kind === 'cable' ? { kind: 'link', linkId: part.linkId } : { kind: 'device', deviceId: part.deviceId };

/** The chain with these parts in the places of those before; a part whose place there is not changes nothing. */
export const withInstalled = (chain: Chain, parts: readonly InstalledPart[]): Chain => ({
  ...chain,
  links: chain.links.map((link) => {
    const part = parts.findLast((one) => one.kind === 'cable' && one.linkId === link.id);
    return part?.kind === 'cable' ? cable(link, part) : link;
  }),
  devices: chain.devices.map((device) => {
    const part = parts.findLast((one) => one.kind === 'device' && one.deviceId === device.id);
    return part?.kind === 'device' ? installedDevice(device, part) : device;
  }),
});

type CablePart = Extract<InstalledPart, { kind: 'cable' }>;
/** Where it lies stays; everything else was said of the cable before. */
function cable(
  { id, from, to, route }: Link,
  { construction, category, certified, lengthM, installedOn, fittedRight }: CablePart,
): Link {
  const end = { needsPower: false, powered: 'unknown', seated: fittedRight ? 'yes' : 'unknown' } as const;
  const lies = fittedRight ? 'asMarked' : 'unknown';
  return {
    id,
    from,
    to,
    route,
    construction,
    category,
    certified,
    lengthM,
    installedOn,
    direction: construction === 'passiveCopper' ? 'notDirectional' : lies,
    factoryFittedEnds: null,
    sourceEnd: end,
    sinkEnd: end,
    drawMa: null,
    notes: '',
  };
}

type DevicePart = Extract<InstalledPart, { kind: 'device' }>;
/** Its sockets stay, as they are wired; of another model nothing else that was looked up holds. */
function installedDevice(before: Device, { model, serial, firmware }: DevicePart): Device {
  const fresh = { ...before, model, serial, firmware, settings: {} };
  if (model !== null && model === before.model) return fresh;
  const { passes: _, ...known } = fresh;
  return {
    ...known,
    menuSurvivesLossOfInput: 'unknown',
    menuKeepsFormat: 'unknown',
    edidHandling: { kind: 'passesOn' },
    outputFormat: null,
    notes: '',
    ports: before.ports.map((port) => ({ ...port, edidHex: null })),
  };
}
