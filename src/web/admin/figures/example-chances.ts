import type { Chain } from '../../../../shared/contract/chain.ts';
import type { Message } from '../../../../shared/contract/message.ts';
import type { Symptom } from '../../../../shared/contract/symptom.ts';
import {
  type Overrides,
  plainCase,
  standingOf,
  suspectsOf,
  tableOf,
} from '../../../../shared/isolation/index.ts';
import { newDevice, newLink } from '../../place/chain-edits.ts';

/** A source, a receiver and a display, on 2 m of copper and on 12 m of it in a wall. */
function example(names: ExampleNames): Chain {
  const chain: Chain = { name: names.chain, devices: [], links: [], wantedFormats: [] };
  for (const role of ['source', 'receiver', 'display'] as const) {
    const device = newDevice(role, names[role], chain);
    const ports = (['input', 'output'] as const).flatMap((direction) => {
      const first = device.ports.find((port) => port.direction === direction);
      return first === undefined ? [] : [{ ...first, label: direction === 'input' ? 'IN' : 'OUT' }];
    });
    chain.devices.push({ ...device, ports });
  }
  const short = { lengthM: 2, category: 'premiumHighSpeed', route: 'free' } as const;
  const long = { lengthM: 12, category: 'highSpeed', route: 'inWall' } as const;
  for (const cable of [short, long]) chain.links.push({ ...newLink(chain), ...cable });
  return chain;
}
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
