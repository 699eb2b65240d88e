import {
  componentsBetween,
  displaysOf,
  downstreamOf,
  findLink,
  linksOutOf,
  sourcesOf,
  upstreamOf,
} from '../../../shared/chain/graph.ts';
import { placeKey } from '../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { Cause, Fault } from './faults.ts';

/** A change as somebody makes it; kinds are the product's names, what they do is written here from what hands do. */
export type Deed = { kind: string; target: Place };

type Helps = Partial<Record<Cause, number>>;
/**
 * What a deed does, as chances that a fault stays away while it is done (all assumed, rounder than anything the
 * product reckons with, and on purpose not taken from it).
 */
type Doing = {
  /** Parts that the picture no longer runs through. */
  takesOut?: (chain: Chain, target: Place) => string[];
  /** For a fault in the very part, in what joins it, anywhere on the way, and before or behind it. */
  here?: Helps;
  beside?: Helps;
  anywhere?: Helps;
  upstream?: Helps;
  downstream?: Helps;
};

const link = (id: string): Place => ({ kind: 'link', linkId: id });
const device = (id: string): Place => ({ kind: 'device', deviceId: id });
const idOf = (target: Place): string => ('deviceId' in target ? target.deviceId : '');
const own = (_chain: Chain, target: Place): string[] => [
  placeKey(target.kind === 'port' ? device(target.deviceId) : target),
];
/** A source and all that only it plays through. */
const onlyOf = (chain: Chain, target: Place): string[] => {
  const id = idOf(target);
  const others = sourcesOf(chain).filter((each) => each.id !== id);
  const shared = new Set(others.flatMap((each) => [each.id, ...downstreamOf(chain, each.id)]));
  const mine = [id, ...downstreamOf(chain, id)].filter((each) => !shared.has(each));
  return mine.flatMap((each) => [
    placeKey(device(each)),
    ...linksOutOf(chain, each).map((out) => placeKey(link(out.id))),
  ]);
};
const between = (chain: Chain, from: string, to: string): string[] =>
  componentsBetween(chain, from, to).map(placeKey);
const toProcessor = (chain: Chain, target: Place): string[] => {
  const reached = downstreamOf(chain, idOf(target));
  const processor = chain.devices.find(({ id, role }) => role === 'processor' && reached.has(id));
  return processor === undefined ? [] : between(chain, idOf(target), processor.id);
};
const toDisplays = (chain: Chain, target: Place): string[] =>
  displaysOf(chain).flatMap(({ id }) => between(chain, idOf(target), id));
const branch = (chain: Chain, target: Place): string[] => {
  const cut = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
  if (cut === undefined) return [];
  const gone = [cut.to.deviceId, ...downstreamOf(chain, cut.to.deviceId)];
  return [
    placeKey(target),
    ...gone.flatMap((id) => [
      placeKey(device(id)),
      ...linksOutOf(chain, id).map((out) => placeKey(link(out.id))),
    ]),
  ];
};

const handshake: Helps = {
  latched: 0.6,
  edid: 0.3,
  contentProtection: 0.35,
  fiveVolt: 0.25,
  controlBus: 0.2,
};
const lessRate: Helps = { bandwidth: 0.85, portMode: 0.8, wallPlate: 0.5, linkPower: 0.2, contact: 0.15 };
const newCable: Doing = { takesOut: own, here: { wallPlate: 0.9 }, beside: { fiveVolt: 0.25, contact: 0.3 } };
const powerOff: Helps = { latched: 0.95, heat: 0.3, contentProtection: 0.3, edid: 0.3, firmware: 0.35 };

/** By the kind of change; a kind that is not here does nothing to any fault. */
export const doings: Readonly<Record<string, Doing>> = {
  reseat: { here: { contact: 0.55, wallPlate: 0.3 }, beside: { ...handshake, contact: 0.5 } },
  flexCable: { here: { contact: 0.4, wallPlate: 0.3 }, beside: { contact: 0.4 } },
  replaceCable: newCable,
  temporaryCable: newCable,
  otherSource: { takesOut: onlyOf },
  otherTitle: { here: { content: 0.8 } },
  otherApplication: { here: { content: 0.85, firmware: 0.2 } },
  otherOutputSetting: { here: { content: 0.4, hdrSetting: 0.6 }, downstream: lessRate },
  lowerRate: { here: { content: 0.3 }, downstream: lessRate },
  sourceIntoProcessor: { takesOut: toProcessor },
  bypassDevice: { takesOut: own, beside: { contact: 0.35 } },
  unplugBranch: { takesOut: branch, upstream: { edid: 0.4, contentProtection: 0.3, controlBus: 0.4 } },
  movePort: { here: { portMode: 0.75, reset: 0.5, hdrSetting: 0.5 }, beside: { contact: 0.45 } },
  raisePortMode: { here: { portMode: 0.97, reset: 0.7, hdrSetting: 0.6 } },
  disableProcessing: { here: { processing: 0.9, edid: 0.5 } },
  limitInputBandwidth: { here: { portMode: 0.7 }, upstream: lessRate, downstream: lessRate },
  limitOutputBandwidth: { here: { portMode: 0.6 }, downstream: lessRate },
  reissueHotPlug: { anywhere: handshake },
  powerCycle: { here: powerOff, beside: { fiveVolt: 0.2 } },
  mainsOffForAll: { anywhere: powerOff },
  controlBusOff: { anywhere: { controlBus: 0.95 } },
  otherWakeOrder: { anywhere: { controlBus: 0.5, wakeOrder: 0.9, fiveVolt: 0.4, edid: 0.4, latched: 0.3 } },
  ownRemotes: { anywhere: { controlBus: 0.8, controlSystem: 0.95, wakeOrder: 0.3 } },
  otherOutlet: { here: { heat: 0.05 }, anywhere: { disturber: 0.3 } },
  otherSupply: { here: { heat: 0.25, linkPower: 0.6 } },
  clearVents: { here: { heat: 0.7 } },
  disconnectDisturber: { anywhere: { disturber: 0.9 } },
  unplugAerial: { anywhere: { disturber: 0.2, earthLoop: 0.5 } },
  unplugNetwork: { anywhere: { disturber: 0.1, earthLoop: 0.3 } },
  oneSocketCircuit: { anywhere: { disturber: 0.4, earthLoop: 0.85 } },
  insertSyncSwitch: {
    here: { bandwidth: 0.4, contact: 0.3 },
    beside: handshake,
    anywhere: { fiveVolt: 0.4 },
  },
  moveProcessorToDisplay: { takesOut: toDisplays },
  substituteDisplay: { takesOut: own, beside: { contact: 0.35 } },
  restoreSettings: { here: { reset: 0.95, hdrSetting: 0.85, portMode: 0.7, edid: 0.5, processing: 0.7 } },
  updateFirmware: { here: { firmware: 0.8, edid: 0.2, contentProtection: 0.2, latched: 0.5 } },
};

const partOf = (place: Place): Place => (place.kind === 'port' ? device(place.deviceId) : place);
const isBeside = (chain: Chain, target: Place, at: Place): boolean => {
  const meets = (linkId: string, deviceId: string): boolean => {
    const found = findLink(chain, linkId);
    return found?.from.deviceId === deviceId || found?.to.deviceId === deviceId;
  };
  if (target.kind === 'link' && at.kind === 'device') return meets(target.linkId, at.deviceId);
  if ((target.kind === 'device' || target.kind === 'port') && at.kind === 'link')
    return meets(at.linkId, target.deviceId);
  return false;
};

/** Devices that a part's signal runs through before it, or after it. */
export function reachOf(chain: Chain, at: Place): { before: Set<string>; after: Set<string> } {
  if (at.kind === 'link') {
    const found = findLink(chain, at.linkId);
    if (found === undefined) return { before: new Set(), after: new Set() };
    return {
      before: upstreamOf(chain, found.from.deviceId).add(found.from.deviceId),
      after: downstreamOf(chain, found.to.deviceId).add(found.to.deviceId),
    };
  }
  const id = idOf(at);
  return { before: upstreamOf(chain, id), after: downstreamOf(chain, id) };
}

/** The chance that a deed keeps a fault away while it is done. */
export function helpChance(chain: Chain, { kind, target }: Deed, { at, cause }: Fault): number {
  const doing = doings[kind] ?? {};
  const [part, touched] = [partOf(at), partOf(target)];
  if (doing.takesOut?.(chain, touched).includes(placeKey(part))) return 0.96;
  const { before, after } = reachOf(chain, part);
  const chances = [
    doing.anywhere?.[cause],
    placeKey(part) === placeKey(touched) ? doing.here?.[cause] : undefined,
    isBeside(chain, touched, part) ? doing.beside?.[cause] : undefined,
    // the fault lies before what was touched, or behind it
    touched.kind !== 'chain' && after.has(idOf(touched)) ? doing.upstream?.[cause] : undefined,
    touched.kind !== 'chain' && before.has(idOf(touched)) ? doing.downstream?.[cause] : undefined,
  ];
  return Math.max(0, ...chances.map((chance) => chance ?? 0));
}
