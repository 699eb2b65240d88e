import {
  componentsBetween,
  displaysOf,
  downstreamOf,
  findDevice,
  freePorts,
  linkAtPort,
  linksInto,
  linksOutOf,
  pathsBetween,
  upstreamOf,
} from '../../../shared/chain/graph.ts';
import { bitRateGbps } from '../../../shared/chain/signal-mode.ts';
import type { Chain, Device, Link, Port, SignalMode } from '../../../shared/contract/chain.ts';
import type { ChangeKind, TriageRecord } from '../../../shared/contract/triage.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { standingEvidence, standingSides } from '../record.ts';
import type { Segment } from '../segment.ts';

/** What decides where a change applies: the chain as found, what of it can still be at fault, and the record. */
export type Scene = { chain: Chain; segment: Segment; record: TriageRecord };
/** Why a change makes no sense at a place; null when it does. */
type WhyNot<Target> = (scene: Scene, target: Target) => Message | null;
export type PortAt = { device: Device; port: Port };

/** The limit that the trade tests with: three channels of ten bits at 300 MHz; common practice, no source. */
const limitedGbps = 9;
/** A passive cable that passes every rate with certainty; common practice, no source. */
const shortPassiveM = 4;
/** Free cables up to this length are replaced as easily as bridged; assumed. */
const easilyReplacedM = 5;

const modeInUse = (port: Port): SignalMode => port.setMode ?? port.highestMode;

const outside = message('onTheOtherSide');
const has = (ids: readonly string[], id: string): boolean => ids.includes(id);
const inputSide = ({ segment }: Scene, device: Device): Message | null =>
  has(segment.inputHalfIds, device.id) ? null : outside;
const outputSide = ({ segment }: Scene, device: Device): Message | null =>
  has(segment.outputHalfIds, device.id) ? null : outside;
const eitherSide = ({ segment }: Scene, device: Device): Message | null =>
  has(segment.deviceIds, device.id) ? null : outside;
const linkPossible = ({ segment }: Scene, link: Link): Message | null =>
  has(segment.linkIds, link.id) ? null : outside;

const onlyRoles = (device: Device, ...roles: Device['role'][]): Message | null =>
  roles.includes(device.role) ? null : message('doneAtRoles', { roles, role: device.role });

const linkedPorts = (chain: Chain, device: Device, direction: Port['direction']): Port[] =>
  device.ports.filter(
    (port) =>
      port.direction === direction &&
      linkAtPort(chain, { deviceId: device.id, portId: port.id }) !== undefined,
  );

function aboveLimit({ chain }: Scene, device: Device, direction: Port['direction']): Message | null {
  const ports = linkedPorts(chain, device, direction);
  if (ports.length === 0) return message(direction === 'input' ? 'nothingOnInput' : 'nothingOnOutput');
  return ports.some((port) => bitRateGbps(modeInUse(port)) > limitedGbps)
    ? null
    : message(direction === 'input' ? 'inputLimitedAlready' : 'outputLimitedAlready', { rate: limitedGbps });
}

const isPossible = ({ segment }: Scene, fromId: string, toId: string, chain: Chain): boolean =>
  componentsBetween(chain, fromId, toId).some((place) =>
    place.kind === 'link' ? has(segment.linkIds, place.linkId) : has(segment.deviceIds, place.deviceId),
  );

export const linkWhyNot: Partial<Record<ChangeKind, WhyNot<Link>>> = {
  reseat: linkPossible,
  replaceCable: (scene, link) =>
    linkPossible(scene, link) ?? (link.route === 'inWall' ? message('cableInWall') : null),
  temporaryCable: (scene, link) =>
    linkPossible(scene, link) ??
    (link.route === 'free' && link.lengthM <= easilyReplacedM ? message('cableShortAndFree') : null),
  insertSyncSwitch: linkPossible,
  unplugBranch: (scene, link) => {
    const { chain } = scene;
    const fork = findDevice(chain, link.from.deviceId);
    const others = linksOutOf(chain, link.from.deviceId).filter((each) => each.id !== link.id);
    if (fork === undefined || others.length === 0) return message('noParallelBranch');
    const beyond = downstreamOf(chain, link.to.deviceId).add(link.to.deviceId);
    const watched = standingSides(scene.record).find(({ deviceId }) => beyond.has(deviceId));
    if (watched !== undefined) return message('watchedPictureRunsThrough');
    return outputSide(scene, fork);
  },
};

export const portWhyNot: Partial<Record<ChangeKind, WhyNot<PortAt>>> = {
  movePort: (scene, { device, port }) =>
    portPossible(scene, { device, port }) ??
    (freePorts(scene.chain, device.id, port.direction).length > 0
      ? null
      : message(port.direction === 'input' ? 'noOtherInput' : 'noOtherOutput')),
  raisePortMode: (scene, { device, port }) => {
    if (port.setMode === null) return message('portModeNotSet');
    return bitRateGbps(port.setMode) < bitRateGbps(port.highestMode)
      ? portPossible(scene, { device, port })
      : message('portModeHighest');
  },
};

function portPossible(scene: Scene, { device, port }: PortAt): Message | null {
  if (linkAtPort(scene.chain, { deviceId: device.id, portId: port.id }) === undefined) {
    return message('nothingPluggedIn');
  }
  return port.direction === 'input' ? inputSide(scene, device) : outputSide(scene, device);
}

export const deviceWhyNot: Partial<Record<ChangeKind, WhyNot<Device>>> = {
  otherSource: (scene, device) => onlyRoles(device, 'source') ?? outputSide(scene, device),
  sourceIntoProcessor: (scene, device) => {
    const { chain } = scene;
    const reached = downstreamOf(chain, device.id);
    const processors = chain.devices.filter(({ id, role }) => role === 'processor' && reached.has(id));
    const withDevices = processors.filter(({ id }) =>
      componentsBetween(chain, device.id, id).some(({ kind }) => kind === 'device'),
    );
    return (
      onlyRoles(device, 'source') ??
      (processors.length === 0 ? message('noProcessorFollows') : null) ??
      (withDevices.length === 0 ? message('straightIntoProcessor') : null) ??
      (withDevices.some(({ id }) => isPossible(scene, device.id, id, chain)) ? null : outside)
    );
  },
  bypassDevice: (scene, device) => {
    if (device.role === 'source' || device.role === 'display')
      return message('cannotBypass', { role: device.role });
    const between =
      linksInto(scene.chain, device.id).length > 0 && linksOutOf(scene.chain, device.id).length > 0;
    return between ? eitherSide(scene, device) : message('noSignalInAndOut');
  },
  disableProcessing: (scene, device) =>
    device.processesPicture || device.edidHandling.kind !== 'passesOn'
      ? eitherSide(scene, device)
      : message('nothingToSwitchOff'),
  limitInputBandwidth: (scene, device) =>
    onlyRoles(device, 'processor', 'receiver', 'switch', 'display') ??
    inputSide(scene, device) ??
    aboveLimit(scene, device, 'input'),
  limitOutputBandwidth: (scene, device) =>
    onlyRoles(device, 'source', 'receiver', 'processor') ??
    outputSide(scene, device) ??
    aboveLimit(scene, device, 'output'),
  reissueHotPlug: (scene, device) =>
    onlyRoles(device, 'processor', 'receiver', 'switch') ?? inputSide(scene, device),
  moveProcessorToDisplay: (scene, device) => {
    const { chain } = scene;
    const displays = displaysOf(chain).filter(({ id }) => upstreamOf(chain, id).has(device.id));
    const far = displays.filter(({ id }) => shortestM(chain, device.id, id) > shortPassiveM);
    return (
      onlyRoles(device, 'processor') ??
      (displays.length === 0 ? message('noDisplayFollows') : null) ??
      (far.length === 0 ? message('joinedWithin', { length: shortPassiveM }) : null) ??
      (far.some(({ id }) => isPossible(scene, device.id, id, chain)) ? null : outside)
    );
  },
  substituteDisplay: (scene, device) => onlyRoles(device, 'display') ?? eitherSide(scene, device),
  restoreSettings: (scene, device) =>
    eitherSide(scene, device) ?? (hasEarlierSettings(scene, device) ? null : message('noEarlierSettings')),
  updateFirmware: eitherSide,
};

/** Metres of cable on the shortest way from one device to another. */
function shortestM(chain: Chain, fromId: string, toId: string): number {
  const lengthM = new Map(chain.links.map((link) => [link.id, link.lengthM]));
  const lengths = pathsBetween(chain, fromId, toId).paths.map(({ linkIds }) =>
    linkIds.reduce((total, id) => total + (lengthM.get(id) ?? 0), 0),
  );
  return Math.min(...lengths);
}

function hasEarlierSettings({ record }: Scene, device: Device): boolean {
  return (
    Object.keys(device.settings).length > 0 ||
    (record.whatChanged?.answers.some(({ kind }) => kind === 'setting') ?? false) ||
    standingEvidence(record).some(({ kind, tie }) => kind === 'settings' && tie.deviceId === device.id)
  );
}
