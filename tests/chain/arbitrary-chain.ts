import fc from 'fast-check';
import {
  type Chain,
  type Device,
  type DeviceRole,
  deviceRoles,
  type Link,
  linkCategories,
  linkConstructions,
  type Port,
  type SignalMode,
} from '../../shared/contract/chain.ts';

/** How many connected inputs and outputs a device of each role takes before the generator looks elsewhere. */
const room: Record<DeviceRole, { inputs: number; outputs: number }> = {
  source: { inputs: 0, outputs: 2 },
  switch: { inputs: 8, outputs: 2 },
  receiver: { inputs: 8, outputs: 3 },
  processor: { inputs: 4, outputs: 2 },
  extender: { inputs: 1, outputs: 1 },
  splitter: { inputs: 1, outputs: 8 },
  display: { inputs: 4, outputs: 0 },
};
const betweenRoles = deviceRoles.filter((role) => role !== 'source' && role !== 'display');

export type ChainLimits = { maxSources?: number; maxBetween?: number; maxDisplays?: number };

type PortFacts = Omit<Port, 'id' | 'label' | 'direction'>;
type DeviceFacts = Omit<Device, 'id' | 'name' | 'role' | 'ports'>;
type LinkFacts = Omit<Link, 'id' | 'from' | 'to'>;
/** One more cable, and a number that picks where it comes from or goes to. */
type Cable = { pick: number; facts: LinkFacts; from: PortFacts; to: PortFacts };
type Node = { role: DeviceRole; facts: DeviceFacts; feeds: Cable[]; onward: Cable };

const signalModes: fc.Arbitrary<SignalMode> = fc.oneof(
  fc
    .constantFrom(74.25, 165, 225, 300, 340, 600)
    .map((maxCharacterRateMHz) => ({ kind: 'tmds' as const, maxCharacterRateMHz })),
  fc.record({
    kind: fc.constant('frl' as const),
    lanes: fc.constantFrom(3 as const, 4 as const),
    gbpsPerLane: fc.constantFrom(3 as const, 6 as const, 8 as const, 10 as const, 12 as const),
  }),
);
const lengthsM = fc.integer({ min: 5, max: 600 }).map((tenths) => tenths / 10);
const threeState = fc.constantFrom('yes' as const, 'no' as const, 'unknown' as const);

const portFacts: fc.Arbitrary<PortFacts> = fc.record({
  highestMode: signalModes,
  setMode: fc.option(signalModes),
  contentProtection: fc.constantFrom('none' as const, '1.4' as const, '2.2' as const, '2.3' as const),
  edidHex: fc.constant(null),
  fiveVoltMa: fc.option(fc.integer({ min: 0, max: 500 })),
});

const deviceFacts: fc.Arbitrary<DeviceFacts> = fc.record({
  model: fc.option(fc.constantFrom('AB-100', 'CD-20', 'EF-3')),
  serial: fc.option(fc.integer({ min: 1, max: 99_999 }).map((number) => `S${number}`)),
  firmware: fc.option(fc.constantFrom('1.8', '1.8.1', '3.0', '3.10', 'FW v2.04', '2025-03-01', 'unreadable')),
  drawsMenu: fc.boolean(),
  menuSurvivesLossOfInput: threeState,
  menuKeepsFormat: threeState,
  processesPicture: fc.boolean(),
  edidHandling: fc.oneof(
    fc.constant({ kind: 'passesOn' as const }),
    fc.constant({ kind: 'replaces' as const, edidHex: null }),
    fc.record({
      kind: fc.constant('limits' as const),
      maxTmdsCharacterRateMHz: fc.option(fc.constantFrom(165, 300, 340)),
      dropsFrl: fc.boolean(),
      drops420: fc.boolean(),
      dropsHdr: fc.boolean(),
      stereoOnly: fc.boolean(),
    }),
  ),
  outputFormat: fc.constant(null),
  settings: fc.dictionary(
    fc.constantFrom('Input signal format', 'EDID', 'Deep colour'),
    fc.oneof(fc.boolean(), fc.integer({ min: 0, max: 9 }), fc.constantFrom('on', 'off', 'auto')),
    { noNullPrototype: true },
  ),
  notes: fc.constant(''),
});

const linkEnd = fc.record({ needsPower: fc.boolean(), powered: threeState, seated: threeState });
const linkFacts: fc.Arbitrary<LinkFacts> = fc.record({
  construction: fc.constantFrom(...linkConstructions),
  category: fc.constantFrom(...linkCategories),
  certified: fc.boolean(),
  lengthM: lengthsM,
  direction: fc.constantFrom('notDirectional', 'asMarked', 'reversed', 'unknown'),
  factoryFittedEnds: fc.option(fc.boolean()),
  sourceEnd: linkEnd,
  sinkEnd: linkEnd,
  route: fc.constantFrom('free', 'inWall', 'inConduit'),
  installedOn: fc.option(fc.constantFrom('2019-06-01', '2024-11-30')),
  drawMa: fc.option(fc.integer({ min: 0, max: 300 })),
  notes: fc.constant(''),
});

const cables: fc.Arbitrary<Cable> = fc.record({
  pick: fc.nat(10_000),
  facts: linkFacts,
  from: portFacts,
  to: portFacts,
});
const nodes = (roles: fc.Arbitrary<DeviceRole>): fc.Arbitrary<Node> =>
  fc.record({
    role: roles,
    facts: deviceFacts,
    feeds: fc.array(cables, { minLength: 1, maxLength: 3, size: 'max' }),
    onward: cables,
  });

/** The chain under construction; devices stand in the order of the signal, so that no link can close a loop. */
class Workbench {
  readonly devices: Device[] = [];
  readonly links: Link[] = [];

  add(role: DeviceRole, facts: DeviceFacts): Device {
    const number = this.devices.length + 1;
    const device: Device = { ...facts, id: `d${number}`, name: `${role} ${number}`, role, ports: [] };
    this.devices.push(device);
    return device;
  }

  hasRoom(device: Device, direction: Port['direction']): boolean {
    const used = device.ports.filter((port) => port.direction === direction).length;
    return used < room[device.role][direction === 'input' ? 'inputs' : 'outputs'];
  }

  connect(from: Device, to: Device, { facts, from: outFacts, to: inFacts }: Cable): void {
    const fromPort = this.#socket(from, 'output', outFacts);
    const toPort = this.#socket(to, 'input', inFacts);
    this.links.push({
      ...facts,
      id: `L${this.links.length + 1}`,
      from: { deviceId: from.id, portId: fromPort.id },
      to: { deviceId: to.id, portId: toPort.id },
    });
  }

  #socket(device: Device, direction: Port['direction'], facts: PortFacts): Port {
    const number = device.ports.filter((port) => port.direction === direction).length + 1;
    const id = `${direction === 'input' ? 'in' : 'out'}${number}`;
    const port: Port = { ...facts, id, label: `${direction.toUpperCase()} ${number}`, direction };
    device.ports.push(port);
    return port;
  }
}

function picked<Item>(items: readonly Item[], pick: number): Item | undefined {
  return items[pick % Math.max(1, items.length)];
}

function assemble(sources: Node[], between: Node[], displays: Node[]): Chain {
  const bench = new Workbench();
  const onwardOf = new Map<Device, Cable>();
  const place = (node: Node): Device => {
    const device = bench.add(node.role, node.facts);
    onwardOf.set(device, node.onward);
    return device;
  };
  for (const node of sources) place(node);
  for (const node of [...between, ...displays]) {
    const upstream = [...bench.devices];
    const device = place(node);
    for (const cable of node.feeds.slice(0, room[node.role].inputs)) {
      const free = upstream.filter((each) => bench.hasRoom(each, 'output'));
      const from = picked(free, cable.pick);
      if (from !== undefined) bench.connect(from, device, cable);
      else if (!device.ports.some((port) => port.direction === 'input'))
        bench.connect(bench.add('source', node.facts), device, cable);
    }
  }
  finishLooseEnds(bench, onwardOf);
  return { name: 'A random chain', devices: bench.devices, links: bench.links, wantedFormats: [] };
}

/** Every device that feeds nothing yet, displays aside, is led on to a device after it, or to a display of its own. */
function finishLooseEnds(bench: Workbench, onwardOf: Map<Device, Cable>): void {
  for (const [at, device] of [...bench.devices].entries()) {
    const cable = onwardOf.get(device);
    if (device.role === 'display' || cable === undefined) continue;
    if (bench.links.some((link) => link.from.deviceId === device.id)) continue;
    const free = bench.devices.slice(at + 1).filter((each) => bench.hasRoom(each, 'input'));
    bench.connect(device, picked(free, cable.pick) ?? bench.add('display', plainDisplay), cable);
  }
}

const plainDisplay: DeviceFacts = {
  model: null,
  serial: null,
  firmware: null,
  drawsMenu: true,
  menuSurvivesLossOfInput: 'unknown',
  menuKeepsFormat: 'unknown',
  processesPicture: false,
  edidHandling: { kind: 'passesOn' },
  outputFormat: null,
  settings: {},
  notes: '',
};

/**
 * Random chains without faults: at least one source and one display, every device on a way from a source to a
 * display, no loops, every port used once at most; with branches, several sources and every kind of cable.
 * Device ids are d1, d2, ..., links L1, L2, ..., ports in1, out1, ...; the order of devices is a signal order but
 * for sources and displays that had to be added. Shrinks towards one source on one display.
 */
export function arbitraryChain(limits: ChainLimits = {}): fc.Arbitrary<Chain> {
  const { maxSources = 4, maxBetween = 8, maxDisplays = 3 } = limits;
  return fc
    .tuple(
      fc.array(nodes(fc.constant('source')), { minLength: 1, maxLength: maxSources, size: 'max' }),
      fc.array(nodes(fc.constantFrom(...betweenRoles)), { maxLength: maxBetween, size: 'max' }),
      fc.array(nodes(fc.constant('display')), { minLength: 1, maxLength: maxDisplays, size: 'max' }),
    )
    .map(([sources, between, displays]) => assemble(sources, between, displays));
}
