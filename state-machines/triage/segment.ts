import {
  displaysOf,
  downstreamOf,
  findDevice,
  linksInto,
  linksOutOf,
  sourcesOf,
  upstreamOf,
} from '../../shared/chain/graph.ts';
import { namedPlace } from '../../shared/chain/named-place.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import type { Side, SideProof, TriageRecord } from '../../shared/contract/triage.ts';
import { type Message, message } from '../../shared/message/message.ts';
import { standingSides } from './record.ts';

type Answer = { deviceId: string; side: Side; proof?: SideProof };

/** A device that receives right and sends wrong: only it can be at fault, and what told it what to send. */
const sendsWrong = ({ proof }: Answer): boolean => proof?.kind === 'trace' && proof.sendsWrong;

/**
 * The part of a chain that the fault can still lie in: device and link ids in the order of the chain. A device at
 * the edge is in it with one half only: its input half when the fault lies upstream of its menu, else its output half.
 */
export type Segment = {
  deviceIds: string[];
  linkIds: string[];
  /** Devices whose input half can still be at fault; and those whose output half can. */
  inputHalfIds: string[];
  outputHalfIds: string[];
  /** The device next to the segment against the signal, at which the fault lay downstream. */
  upstreamDeviceId: string | null;
  /** The device next to the segment along the signal, at which the fault lay upstream. */
  downstreamDeviceId: string | null;
};

const inputHalf = (deviceId: string): string => `input ${deviceId}`;
const outputHalf = (deviceId: string): string => `output ${deviceId}`;
const wholeLink = (linkId: string): string => `link ${linkId}`;
const bothHalves = (deviceIds: Iterable<string>): string[] =>
  [...deviceIds].flatMap((deviceId) => [inputHalf(deviceId), outputHalf(deviceId)]);

/** The parts that one answer leaves possible. */
function partsLeft(chain: Chain, answer: Answer): Set<string> {
  const { deviceId, side } = answer;
  if (sendsWrong(answer)) return partsBehindSender(chain, deviceId);
  const devices = side === 'input' ? upstreamOf(chain, deviceId) : downstreamOf(chain, deviceId);
  const half = side === 'input' ? inputHalf(deviceId) : outputHalf(deviceId);
  const links = [deviceId, ...devices].flatMap((id) =>
    side === 'input' ? linksInto(chain, id) : linksOutOf(chain, id),
  );
  return new Set([half, ...bothHalves(devices), ...links.map((link) => wholeLink(link.id))]);
}

/**
 * Who can be why a device sends what it should not: its output half, and all that it is told by what follows, up to the
 * first device that answers for itself (an EDID that is passed on speaks for what lies beyond).
 */
function partsBehindSender(chain: Chain, deviceId: string): Set<string> {
  const parts = new Set([outputHalf(deviceId)]);
  const waiting = [deviceId];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop())
    for (const link of linksOutOf(chain, id)) {
      const next = findDevice(chain, link.to.deviceId);
      parts.add(wholeLink(link.id));
      if (next === undefined || parts.has(inputHalf(next.id))) continue;
      parts.add(inputHalf(next.id));
      if (next.edidHandling.kind !== 'passesOn') continue;
      parts.add(outputHalf(next.id));
      waiting.push(next.id);
    }
  return parts;
}

/** Whether a part can still be at fault by all of these answers. */
function possibleBy(chain: Chain, answers: readonly Answer[]): (part: string) => boolean {
  const lefts = answers.map((answer) => partsLeft(chain, answer));
  return (part) => lefts.every((left) => left.has(part));
}

/** The part of a chain that these answers leave possible; empty lists when they contradict each other. */
export function segmentFor(chain: Chain, answers: readonly Answer[]): Segment {
  const possible = possibleBy(chain, answers);
  const ids = chain.devices.map((device) => device.id);
  const inputHalfIds = ids.filter((id) => possible(inputHalf(id)));
  const outputHalfIds = ids.filter((id) => possible(outputHalf(id)));
  return {
    deviceIds: ids.filter((id) => possible(inputHalf(id)) || possible(outputHalf(id))),
    linkIds: chain.links.map((link) => link.id).filter((id) => possible(wholeLink(id))),
    inputHalfIds,
    outputHalfIds,
    upstreamDeviceId: nearest(answers, 'output', (id) => downstreamOf(chain, id)),
    downstreamDeviceId: nearest(answers, 'input', (id) => upstreamOf(chain, id)),
  };
}

/** Of the devices with this answer, the one that bounds the segment most closely. */
function nearest(
  answers: readonly Answer[],
  side: Side,
  beyond: (deviceId: string) => Set<string>,
): string | null {
  const ids = answers.filter((answer) => answer.side === side).map((answer) => answer.deviceId);
  return ids.find((id) => !ids.some((other) => beyond(id).has(other))) ?? null;
}

export const isEmpty = (segment: Segment): boolean =>
  segment.deviceIds.length === 0 && segment.linkIds.length === 0;

/** Devices whose menu can still tell a side: either answer would leave something that can be at fault. */
export function menuDevicesLeft(chain: Chain, answers: readonly Answer[]): string[] {
  const possible = possibleBy(chain, answers);
  const leaves = (deviceId: string, side: Side) => [...partsLeft(chain, { deviceId, side })].some(possible);
  return chain.devices
    .map(({ id }) => id)
    .filter((id) => whyNoMenuDevice(chain, id) === null && leaves(id, 'input') && leaves(id, 'output'));
}

/** The components that can still be at fault; all of them before a side is known, null before the chain is. */
export function segmentOf(record: TriageRecord): Segment | null {
  return record.asFound === null ? null : segmentFor(record.asFound.chain, standingSides(record));
}

/** Why a device can't tell one side from the other; null when it can: it draws a menu, on a way to a display. */
export function whyNoMenuDevice(chain: Chain, deviceId: string): Message | null {
  const device = findDevice(chain, deviceId);
  if (device === undefined) return message('deviceNotInChain', { device: deviceId });
  return device.drawsMenu
    ? whyNotOnTheWay(chain, deviceId)
    : message('drawsNoMenu', { device: namedPlace(chain, { kind: 'device', deviceId }) });
}

/** Why no signal that anybody sees runs through a device; null when one does. */
export function whyNotOnTheWay(chain: Chain, deviceId: string): Message | null {
  if (findDevice(chain, deviceId) === undefined) return message('deviceNotInChain', { device: deviceId });
  const named = namedPlace(chain, { kind: 'device', deviceId });
  const upstream = upstreamOf(chain, deviceId).add(deviceId);
  const downstream = downstreamOf(chain, deviceId).add(deviceId);
  const onAPath =
    sourcesOf(chain).some(({ id }) => upstream.has(id)) &&
    displaysOf(chain).some(({ id }) => downstream.has(id));
  return onAPath ? null : message('onNoWayToDisplay', { device: named });
}
