import type { Chain, Device, Link, Place, Port } from '../contract/chain.ts';
import { type Message, message, type NamedPlace } from '../message/index.ts';
import { findDevice, findPort, linkEnds } from './look-up.ts';
import { loopsOf } from './loops.ts';
import { namedLink, namedPlace, namedPort } from './named-place.ts';

/** Why a chain can't be stored: its place, and a JSON pointer (RFC 6901) into the document that was sent. */
export type ChainFault = { said: Message; place: Place; pointer: string };

const deviceAt = (chain: Chain, deviceId: string): NamedPlace =>
  namedPlace(chain, { kind: 'device', deviceId });
/** A device of the document itself, also where another bears its id. */
const asTyped = ({ id, role, name }: Device): NamedPlace => ({
  kind: 'device',
  deviceId: id,
  role,
  name,
  isShared: false,
});

/**
 * Why a chain can't be stored, each fault once, with its place and what to say to the person who typed it. Empty: the chain can be stored. Branches, dead ends beside a complete way
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
      said: message('devicesOfOneId', {
        id: deviceId,
        devices: chain.devices.filter(({ id }) => id === deviceId).map(asTyped),
      }),
      place: { kind: 'device', deviceId },
      pointer: `/devices/${at}/id`,
    };
  });
  const ports = chain.devices.flatMap((device, index) =>
    repeated(device.ports.map(({ id }) => id)).map((at): ChainFault => {
      const portId = device.ports[at]?.id ?? '';
      return {
        said: message('portsOfOneId', { id: portId, device: asTyped(device) }),
        place: { kind: 'port', deviceId: device.id, portId },
        pointer: `/devices/${index}/ports/${at}/id`,
      };
    }),
  );
  const links = repeated(chain.links.map(({ id }) => id)).map((at): ChainFault => {
    const linkId = chain.links[at]?.id ?? '';
    const holders = chain.links.filter(({ id }) => id === linkId).map((link) => namedLink(chain, link));
    return {
      said: message('linksOfOneId', { id: linkId, links: holders }),
      place: { kind: 'link', linkId },
      pointer: `/links/${at}/id`,
    };
  });
  return [...devices, ...ports, ...links];
}

function unknownPorts(chain: Chain): ChainFault[] {
  return endsOf(chain).flatMap(({ link, end, pointer }): ChainFault[] => {
    const ref = link[end];
    if (findPort(chain, ref) !== undefined) return [];
    const known = findDevice(chain, ref.deviceId) !== undefined;
    return [
      {
        said: known
          ? message(end === 'from' ? 'linkFromUnknownPort' : 'linkToUnknownPort', {
              link: link.id,
              port: ref.portId,
              device: deviceAt(chain, ref.deviceId),
            })
          : message(end === 'from' ? 'linkFromUnknownDevice' : 'linkToUnknownDevice', {
              link: link.id,
              device: ref.deviceId,
            }),
        place: { kind: 'link', linkId: link.id },
        pointer: `${pointer}/${known ? 'portId' : 'deviceId'}`,
      },
    ];
  });
}

/** By what the port is at which a link starts, and the one at which it ends. */
const directionFaults = {
  output: { input: null, output: 'linkBetweenOutputs' },
  input: { input: 'linkBetweenInputs', output: 'linkWrongWayRound' },
} as const;

function wrongDirections(chain: Chain): ChainFault[] {
  return chain.links.flatMap((link, at): ChainFault[] => {
    const ends = linkEnds(chain, link);
    if (ends === null) return [];
    const code = directionFaults[ends.output.direction][ends.input.direction];
    if (code === null) return [];
    const values = {
      link: link.id,
      from: namedPort(chain, link.from),
      to: namedPort(chain, link.to),
    };
    return [
      {
        said: message(code, values),
        place: { kind: 'link', linkId: link.id },
        pointer: `/links/${at}`,
      },
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
    const place: Place = { kind: 'port', ...ref };
    return [
      {
        said: message('portUsedTwice', {
          port: namedPlace(chain, place),
          links: [first.link.id, link.id],
        }),
        place,
        pointer,
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
            said: message('lengthNotPositive', { link: namedLink(chain, link), length: link.lengthM }),
            place: { kind: 'link', linkId: link.id },
            pointer: `/links/${at}/lengthM`,
          },
        ],
  );
}

/** Sound back to the receiver leaves by the cable of the picture: such an output has no cable of its own. */
const isReturnAudio = (chain: Chain, device: Device, { id, returnAudio }: Port): boolean =>
  (returnAudio === 'arc' || returnAudio === 'earc') &&
  !chain.links.some(({ from }) => from.deviceId === device.id && from.portId === id);

function displaysWithOutput(chain: Chain): ChainFault[] {
  return chain.devices.flatMap((device, index) =>
    device.role !== 'display'
      ? []
      : device.ports.flatMap((port, at): ChainFault[] =>
          port.direction === 'input' || isReturnAudio(chain, device, port)
            ? []
            : [
                {
                  said: message('displayWithOutput', {
                    display: asTyped(device),
                    output: namedPort(chain, { deviceId: device.id, portId: port.id }),
                  }),
                  place: { kind: 'port', deviceId: device.id, portId: port.id },
                  pointer: `/devices/${index}/ports/${at}`,
                },
              ],
        ),
  );
}

function loops(chain: Chain): ChainFault[] {
  return loopsOf(chain).map(({ deviceIds, linkIds }): ChainFault => {
    const [first = ''] = deviceIds;
    const linkId = linkIds.at(-1) ?? '';
    return {
      said:
        deviceIds.length === 1
          ? message('linkIntoItself', { link: linkId, device: deviceAt(chain, first) })
          : message('signalLoop', {
              devices: deviceIds.map((id) => deviceAt(chain, id)),
              link: linkId,
            }),
      place: { kind: 'link', linkId },
      pointer: `/links/${chain.links.findIndex((link) => link.id === linkId)}`,
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
    const said = orphaned(chain, devices);
    if (said === null) return [];
    return [
      {
        said,
        place: { kind: 'device', deviceId: first.id },
        pointer: `/devices/${chain.devices.indexOf(first)}`,
      },
    ];
  });
}

function orphaned(chain: Chain, group: Device[]): Message | null {
  const [first] = group;
  const devices = group.map(({ id }) => deviceAt(chain, id));
  if (first !== undefined && group.length === 1)
    return message('deviceUnconnected', { device: deviceAt(chain, first.id) });
  const hasSource = group.some(({ role }) => role === 'source');
  const hasDisplay = group.some(({ role }) => role === 'display');
  if (hasSource) return hasDisplay ? null : message('devicesWithoutDisplay', { devices });
  return hasDisplay
    ? message('devicesWithoutSource', { devices })
    : message('devicesWithoutEither', { devices });
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
