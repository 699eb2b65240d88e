import type { Chain, ChainFault, Device, Link } from '../contract/chain.ts';
import { findDevice, findPort, linkEnds } from './look-up.ts';
import { loopsOf } from './loops.ts';
import { deviceName, linkName, placeName, socketName } from './place.ts';
import { listed, sentenceStart } from './sentences.ts';

/**
 * Why a chain can't be stored, each fault once, with its place, a JSON pointer (RFC 6901) into the chain document and
 * a sentence for the person who typed it. Empty: the chain can be stored. Branches, dead ends beside a complete way
 * from source to display, and devices that are fed by several others are ordinary. An empty chain and a device alone
 * are no fault either: a dispatcher may know no more yet.
 */
export function chainFaults(chain: Chain): ChainFault[] {
  return [
    ...duplicateIds(chain),
    ...unknownPorts(chain),
    ...wrongDirections(chain),
    ...portsUsedTwice(chain),
    ...lengths(chain),
    ...displaysWithOutput(chain),
    ...loops(chain),
    ...orphans(chain),
  ];
}

/** Positions at which an id stands that stood before. */
function repeated(ids: string[]): number[] {
  return ids.flatMap((id, at) => (ids.indexOf(id) < at ? [at] : []));
}

function duplicateIds(chain: Chain): ChainFault[] {
  const devices = repeated(chain.devices.map(({ id }) => id)).map((at): ChainFault => {
    const deviceId = chain.devices[at]?.id ?? '';
    return {
      code: 'duplicate-id',
      place: { kind: 'device', deviceId },
      pointer: `/devices/${at}/id`,
      text: `Two devices have the id '${deviceId}': ${namesOf(chain.devices.filter(({ id }) => id === deviceId))}.`,
    };
  });
  const ports = chain.devices.flatMap((device, deviceAt) =>
    repeated(device.ports.map(({ id }) => id)).map((at): ChainFault => {
      const portId = device.ports[at]?.id ?? '';
      return {
        code: 'duplicate-id',
        place: { kind: 'port', deviceId: device.id, portId },
        pointer: `/devices/${deviceAt}/ports/${at}/id`,
        text: `Two ports of ${device.role} '${device.name}' have the id '${portId}'.`,
      };
    }),
  );
  const links = repeated(chain.links.map(({ id }) => id)).map((at): ChainFault => {
    const linkId = chain.links[at]?.id ?? '';
    const holders = chain.links.filter(({ id }) => id === linkId).map((link) => linkName(chain, link));
    return {
      code: 'duplicate-id',
      place: { kind: 'link', linkId },
      pointer: `/links/${at}/id`,
      text: `Two links have the id '${linkId}': ${listed(holders)}.`,
    };
  });
  return [...devices, ...ports, ...links];
}

function unknownPorts(chain: Chain): ChainFault[] {
  return endsOf(chain).flatMap(({ link, end, pointer }): ChainFault[] => {
    const ref = link[end];
    if (findPort(chain, ref) !== undefined) return [];
    const known = findDevice(chain, ref.deviceId) !== undefined;
    const which = end === 'from' ? 'comes from' : 'goes to';
    return [
      {
        code: 'unknown-port',
        place: { kind: 'link', linkId: link.id },
        pointer: `${pointer}/${known ? 'portId' : 'deviceId'}`,
        text: known
          ? `Link '${link.id}' ${which} a port '${ref.portId}' that ${deviceName(chain, ref.deviceId)} doesn't have.`
          : `Link '${link.id}' ${which} a device '${ref.deviceId}' that isn't in the chain.`,
      },
    ];
  });
}

function wrongDirections(chain: Chain): ChainFault[] {
  return chain.links.flatMap((link, at): ChainFault[] => {
    const ends = linkEnds(chain, link);
    if (ends === null) return [];
    const from = socketName(chain, link.from);
    const to = socketName(chain, link.to);
    const directions = `${ends.output.direction} to ${ends.input.direction}`;
    if (directions === 'output to input') return [];
    const text =
      directions === 'input to output'
        ? `Link '${link.id}' runs the wrong way, from the input ${from} to the output ${to}; turn it round.`
        : `Link '${link.id}' joins two ${ends.output.direction}s, ${from} and ${to}; a cable runs from an output to an input.`;
    return [
      { code: 'link-direction', place: { kind: 'link', linkId: link.id }, pointer: `/links/${at}`, text },
    ];
  });
}

function portsUsedTwice(chain: Chain): ChainFault[] {
  const taken = new Map<string, { link: Link; at: number }>();
  return endsOf(chain).flatMap(({ link, at, end, pointer }): ChainFault[] => {
    const ref = link[end];
    const key = `${ref.deviceId}:${ref.portId}`;
    const first = taken.get(key);
    if (first === undefined) taken.set(key, { link, at });
    // A link from a port to itself is a loop, and one fault is enough.
    if (first === undefined || first.at === at || findPort(chain, ref) === undefined) return [];
    const port = placeName(chain, { kind: 'port', ...ref });
    return [
      {
        code: 'port-used-twice',
        place: { kind: 'port', ...ref },
        pointer,
        text: `Links '${first.link.id}' and '${link.id}' are both plugged into ${port}.`,
      },
    ];
  });
}

function lengths(chain: Chain): ChainFault[] {
  return chain.links.flatMap((link, at): ChainFault[] =>
    link.lengthM > 0
      ? []
      : [
          {
            code: 'length-not-positive',
            place: { kind: 'link', linkId: link.id },
            pointer: `/links/${at}/lengthM`,
            text: `The length of ${linkName(chain, link)} is ${link.lengthM} m; it has to be more than nothing.`,
          },
        ],
  );
}

function displaysWithOutput(chain: Chain): ChainFault[] {
  return chain.devices.flatMap((device, deviceAt) =>
    device.role !== 'display'
      ? []
      : device.ports.flatMap((port, at): ChainFault[] =>
          port.direction === 'input'
            ? []
            : [
                {
                  code: 'display-with-output',
                  place: { kind: 'port', deviceId: device.id, portId: port.id },
                  pointer: `/devices/${deviceAt}/ports/${at}`,
                  text: `Display '${device.name}' has an output '${port.label}'; a chain ends at its displays.`,
                },
              ],
        ),
  );
}

function loops(chain: Chain): ChainFault[] {
  return loopsOf(chain).map(({ deviceIds, linkIds }): ChainFault => {
    const [first = ''] = deviceIds;
    const linkId = linkIds.at(-1) ?? '';
    const round = [...deviceIds, first].map((id) => deviceName(chain, id));
    return {
      code: 'cycle',
      place: { kind: 'link', linkId },
      pointer: `/links/${chain.links.findIndex((link) => link.id === linkId)}`,
      text:
        deviceIds.length === 1
          ? `Link '${linkId}' leads from ${deviceName(chain, first)} back into itself.`
          : `The signal goes round in a loop: ${round.join(' → ')}. Link '${linkId}' closes it.`,
    };
  });
}

/** Groups of devices that hang together and lack a source or a display, unless a link to nowhere explains it. */
function orphans(chain: Chain): ChainFault[] {
  const ids = new Set(chain.devices.map(({ id }) => id));
  if (ids.size <= 1) return [];
  return groupsOf(chain, ids).flatMap((group): ChainFault[] => {
    const devices = group.flatMap((id) => findDevice(chain, id) ?? []);
    const [first] = devices;
    if (first === undefined || hasLooseLink(chain, ids, group)) return [];
    const text = orphanText(chain, devices);
    if (text === null) return [];
    return [
      {
        code: 'orphan',
        place: { kind: 'device', deviceId: first.id },
        pointer: `/devices/${chain.devices.indexOf(first)}`,
        text,
      },
    ];
  });
}

function orphanText(chain: Chain, devices: Device[]): string | null {
  const [first] = devices;
  if (first !== undefined && devices.length === 1)
    return `${sentenceStart(deviceName(chain, first.id))} isn't connected to anything.`;
  const missing = [
    ...(devices.some(({ role }) => role === 'source') ? [] : ['source']),
    ...(devices.some(({ role }) => role === 'display') ? [] : ['display']),
  ];
  if (missing.length === 0) return null;
  return `${sentenceStart(namesOf(devices))} are connected to each other, but to no ${missing.join(' and no ')}.`;
}

function hasLooseLink(chain: Chain, ids: Set<string>, group: string[]): boolean {
  return chain.links.some(
    ({ from, to }) =>
      (!ids.has(from.deviceId) || !ids.has(to.deviceId)) &&
      (group.includes(from.deviceId) || group.includes(to.deviceId)),
  );
}

/** Device ids that hang together by links of whatever direction, in the order of the document. */
function groupsOf(chain: Chain, ids: Set<string>): string[][] {
  const groupOf = new Map([...ids].map((id) => [id, [id]]));
  for (const { from, to } of chain.links) {
    const one = groupOf.get(from.deviceId);
    const other = groupOf.get(to.deviceId);
    if (one === undefined || other === undefined || one === other) continue;
    const [larger, smaller] = one.length < other.length ? [other, one] : [one, other];
    larger.push(...smaller);
    for (const id of smaller) groupOf.set(id, larger);
  }
  const order = [...ids];
  return [...new Set(groupOf.values())].map((group) =>
    group.sort((a, b) => order.indexOf(a) - order.indexOf(b)),
  );
}

type End = { link: Link; at: number; end: 'from' | 'to'; pointer: string };
const endsOf = (chain: Chain): End[] =>
  chain.links.flatMap((link, at) =>
    (['from', 'to'] as const).map((end) => ({ link, at, end, pointer: `/links/${at}/${end}` })),
  );

const namesOf = (devices: Device[]): string => listed(devices.map(({ role, name }) => `${role} '${name}'`));
