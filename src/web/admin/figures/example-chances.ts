import type { Chain, Device, Link, Port } from '../../../../shared/contract/chain.ts';
import type { Message } from '../../../../shared/contract/message.ts';
import type { Symptom } from '../../../../shared/contract/symptom.ts';
import {
  type Overrides,
  plainCase,
  standingOf,
  suspectsOf,
  tableOf,
} from '../../../../shared/isolation/index.ts';

const socket = (id: string, direction: Port['direction']): Port => ({
  id,
  label: id.toUpperCase(),
  direction,
  highestMode: { kind: 'tmds', maxCharacterRateMHz: 600 },
  setMode: null,
  contentProtection: 'unknown',
  edidHex: null,
  fiveVoltMa: null,
});
const device = (id: string, role: Device['role'], ports: Port[]): Device => ({
  id,
  name: id,
  role,
  model: null,
  serial: null,
  firmware: null,
  drawsMenu: role !== 'source',
  menuSurvivesLossOfInput: 'unknown',
  menuKeepsFormat: 'unknown',
  processesPicture: false,
  edidHandling: { kind: 'passesOn' },
  outputFormat: null,
  settings: {},
  ports,
  notes: '',
});
const loose = { needsPower: false, powered: 'unknown', seated: 'unknown' } as const;
const copper = (
  id: string,
  from: string,
  to: string,
  facts: Pick<Link, 'lengthM' | 'category' | 'route'>,
): Link => ({
  id,
  from: { deviceId: from, portId: 'out' },
  to: { deviceId: to, portId: 'in' },
  construction: 'passiveCopper',
  certified: false,
  direction: 'notDirectional',
  factoryFittedEnds: true,
  sourceEnd: loose,
  sinkEnd: loose,
  installedOn: null,
  drawMa: null,
  notes: '',
  ...facts,
});

/** A source, a receiver and a display, on 2 m of copper and on 12 m of it in a wall. */
const example = (names: ExampleNames): Chain => ({
  name: names.chain,
  devices: [
    { ...device('source', 'source', [socket('out', 'output')]), name: names.source },
    {
      ...device('receiver', 'receiver', [socket('in', 'input'), socket('out', 'output')]),
      name: names.receiver,
    },
    { ...device('display', 'display', [socket('in', 'input')]), name: names.display },
  ],
  links: [
    copper('C1', 'source', 'receiver', { lengthM: 2, category: 'premiumHighSpeed', route: 'free' }),
    copper('C2', 'receiver', 'display', { lengthM: 12, category: 'highSpeed', route: 'inWall' }),
  ],
  wantedFormats: [],
});
/** What the example and its devices are called, in the language of the screens. */
export type ExampleNames = Record<'chain' | 'source' | 'receiver' | 'display', string>;

/** A suspect of the example with its chances, 0..1: by the built-in figures, and by the organisation's. */
export type ExampleChance = { name: Message; builtIn: number; own: number };

/** How likely each part of the example is at fault before anything is tried, the likeliest by the own figures first. */
export function exampleChances(kind: Symptom['kind'], own: Overrides, names: ExampleNames): ExampleChance[] {
  const symptom: Symptom = {
    kind,
    perHour: null,
    lastsS: null,
    pattern: { kind: 'random', rarely: false },
    onlyWith: null,
  };
  const facts = plainCase(example(names), symptom);
  const [before, after] = [{}, own].map((figures) => suspectsOf(standingOf(facts, tableOf(figures)).model));
  const builtIn = new Map(before?.map(({ component, probability }) => [component, probability]));
  return (after ?? []).map(({ component, name, probability }) => ({
    name,
    builtIn: builtIn.get(component) ?? 0,
    own: probability,
  }));
}
