import { linksOutOf } from '../../../shared/chain/graph.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';

/** What can be wrong in a house, in the trade's words; coarser than the product's fault model in places, finer in others. */
export const causes = [
  // of a cable, or of what joins two
  'contact',
  'bandwidth',
  'direction',
  'linkPower',
  'wallPlate',
  // of a device
  'portMode',
  'hdrSetting',
  'edid',
  'contentProtection',
  'latched',
  'reset',
  'firmware',
  'heat',
  'processing',
  'fiveVolt',
  'content',
  // of neither
  'disturber',
  'controlBus',
] as const;
/** Of all parts together: how they are switched on and told what to do, and how they are earthed. Played, not drawn. */
export const causesTogether = ['wakeOrder', 'controlSystem', 'earthLoop'] as const;
export type Cause = (typeof causes)[number] | (typeof causesTogether)[number];
export const causesOfLinks: readonly Cause[] = [
  'contact',
  'bandwidth',
  'direction',
  'linkPower',
  'wallPlate',
];
export const causesOfHouse: readonly Cause[] = ['disturber', 'controlBus'];
export const causesOfSources: readonly Cause[] = [
  'hdrSetting',
  'contentProtection',
  'firmware',
  'heat',
  'fiveVolt',
  'content',
];
export const causesBetween: readonly Cause[] = [
  'portMode',
  'hdrSetting',
  'edid',
  'contentProtection',
  'latched',
  'reset',
  'firmware',
  'heat',
  'processing',
];

export const triggers = [
  'switchingOn',
  'sourceChange',
  'titleStart',
  'formatChange',
  'afterStandby',
  'cableTouched',
  'applianceSwitches',
] as const;
export type Trigger = (typeof triggers)[number];

/** How a fault comes while its conditions are met. */
export type Rhythm =
  | { kind: 'always' }
  | { kind: 'trigger'; trigger: Trigger; chance: number }
  | { kind: 'random'; perHour: number }
  /** So many bursts an hour, each of so many occurrences a minute apart. */
  | { kind: 'bursts'; perHour: number; inBurst: number }
  | { kind: 'warm'; afterMin: number; perHour: number };

export type Fault = {
  at: Place;
  cause: Cause;
  rhythm: Rhythm;
  /** Shows only with this: a source of the chain, or content that is not always on. */
  onlyWith: { kind: 'source'; deviceId: string } | { kind: 'content'; share: number } | null;
};

type Random = () => number;
export function oneOf<Item>(items: readonly Item[], random: Random): Item {
  const item = items[Math.floor(random() * items.length)];
  if (item === undefined) throw new Error('Nothing to choose from.');
  return item;
}

/** Where a cause can be at all on a chain. */
export function placesFor(chain: Chain, cause: Cause): Place[] {
  if (causesOfHouse.includes(cause)) return [{ kind: 'chain' }];
  if (causesOfLinks.includes(cause)) {
    const needsElectronics = cause === 'direction' || cause === 'linkPower';
    return chain.links
      .filter(({ construction }) => !needsElectronics || construction !== 'passiveCopper')
      .map(({ id }): Place => ({ kind: 'link', linkId: id }));
  }
  return chain.devices
    .filter(({ role }) =>
      role === 'source' ? causesOfSources.includes(cause) : causesBetween.includes(cause),
    )
    .map(({ id }): Place => ({ kind: 'device', deviceId: id }));
}

/** A fault drawn without any regard to how likely the product thinks it. */
export function anyFault(chain: Chain, random: Random): Fault {
  const possible = causes.filter((cause) => placesFor(chain, cause).length > 0);
  const cause = oneOf(possible, random);
  const at = oneOf(placesFor(chain, cause), random);
  return { at, cause, rhythm: anyRhythm(random), onlyWith: anyCondition(chain, random) };
}

function anyRhythm(random: Random): Rhythm {
  const perHour = 60 / (2 + random() * 240);
  switch (Math.floor(random() * 7)) {
    case 0:
      return { kind: 'always' };
    case 1:
    case 2:
      return { kind: 'trigger', trigger: oneOf(triggers, random), chance: 0.2 + 0.8 * random() };
    case 3:
      return { kind: 'bursts', perHour: perHour / 4, inBurst: 2 + Math.floor(random() * 5) };
    case 4:
      return { kind: 'warm', afterMin: 15 + random() * 100, perHour: 1 + perHour };
    case 5:
      // once in ten hours up to once in three days
      return { kind: 'random', perHour: 1 / (10 + random() * 62) };
    default:
      return { kind: 'random', perHour };
  }
}

function anyCondition(chain: Chain, random: Random): Fault['onlyWith'] {
  if (random() < 0.75) return null;
  const sources = chain.devices.filter(
    ({ id, role }) => role === 'source' && linksOutOf(chain, id).length > 0,
  );
  return sources.length > 1 && random() < 0.5
    ? { kind: 'source', deviceId: oneOf(sources, random).id }
    : { kind: 'content', share: 0.3 };
}
