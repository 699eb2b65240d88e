import { type Chain, chain as chainForm } from '../../shared/contract/chain.ts';

/** A chain of so many devices, a third of them sources and displays, wired at random but without loops. */
export function bigChain(count: number, seed: number): Chain {
  let state = seed >>> 0;
  const next = (below: number): number => {
    // Numerical Recipes' linear congruential generator, from memory; any spread will do here.
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  const roleOf = (at: number) => (at < count / 5 ? 'source' : at >= count - count / 6 ? 'display' : 'switch');
  const mode = { kind: 'tmds', maxCharacterRateMHz: 600 } as const;
  const devices = Array.from({ length: count }, (_, at) => ({
    id: `d${at}`,
    name: `Device number ${at} of many`,
    role: roleOf(at),
    ports: [
      ...(roleOf(at) === 'source'
        ? []
        : [{ id: 'in', label: 'IN', direction: 'input' as const, highestMode: mode }]),
      ...(roleOf(at) === 'display'
        ? []
        : [{ id: 'out', label: 'OUT', direction: 'output' as const, highestMode: mode }]),
    ],
  }));
  const links = devices.slice(1).flatMap(({ id, role }, before) => {
    if (role === 'source') return [];
    const from = next(before + 1);
    if (devices[from]?.role === 'display') return [];
    return [
      {
        id: `C${before}`,
        from: { deviceId: `d${from}`, portId: 'out' },
        to: { deviceId: id, portId: 'in' },
        construction: 'passiveCopper' as const,
        lengthM: 2,
      },
    ];
  });
  return chainForm.parse({ name: 'Many', devices, links });
}

const socket = (direction: 'input' | 'output', id: string) =>
  ({ id, label: id, direction, highestMode: { kind: 'tmds', maxCharacterRateMHz: 600 } }) as const;

/**
 * A large house: rooms of five sources, a switch, a receiver, a processor, a splitter and six displays, each room's
 * splitter also feeding the next room's switch; 15 devices a room, and `moreDisplays` in the last. Every cable has ports
 * of its own.
 */
export function houseOf(roomCount: number, moreDisplays = 0): Chain {
  const rooms = Array.from({ length: roomCount }, (_, room) => room);
  const displays = (room: number): number[] =>
    Array.from({ length: 6 + (room === roomCount - 1 ? moreDisplays : 0) }, (_, display) => display);
  const wires = rooms.flatMap((room) => {
    const at = (name: string) => `${name}${room}`;
    return [
      ...[0, 1, 2, 3, 4].map((source): [string, string] => [at(`source${source}-`), at('switch')]),
      [at('switch'), at('receiver')] as [string, string],
      [at('receiver'), at('processor')] as [string, string],
      [at('processor'), at('splitter')] as [string, string],
      ...displays(room).map((display): [string, string] => [at('splitter'), at(`display${display}-`)]),
      ...(room === roomCount - 1 ? [] : [[at('splitter'), `switch${room + 1}`] as [string, string]]),
    ];
  });
  return wired('The whole house', wires);
}

export const houseOfSixty = (): Chain => houseOf(4);

/** Four devices in a row. */
export const rowOfFour = (): Chain =>
  wired('A row', [
    ['source0', 'switch0'],
    ['switch0', 'receiver0'],
    ['receiver0', 'display0'],
  ]);

/** Devices that are named after their roles, by the cables between them; every cable has ports of its own. */
function wired(name: string, wires: readonly (readonly [from: string, to: string])[]): Chain {
  const ids = [...new Set(wires.flat())];
  const devices = ids.map((id) => ({
    id,
    name: `${id.replace(/\d.*/, '')} of room ${id.match(/\d+$/)?.[0]}`,
    role: id.replace(/\d.*/, ''),
    ports: wires.flatMap(([from, to], wire) => [
      ...(from === id ? [socket('output', `out${wire}`)] : []),
      ...(to === id ? [socket('input', `in${wire}`)] : []),
    ]),
  }));
  const links = wires.map(([from, to], wire) => ({
    id: `C${wire + 1}`,
    from: { deviceId: from, portId: `out${wire}` },
    to: { deviceId: to, portId: `in${wire}` },
    construction: 'passiveCopper',
    lengthM: 2,
  }));
  return chainForm.parse({ name, devices, links });
}
