import type { Link } from '../contract/chain.ts';
import { type cableKitConstructions, linkCategories } from '../contract/chain-names.ts';
import { organisationDefaults } from '../contract/defaults.ts';
import { type Message, message } from '../message/message.ts';

type Category = Link['category'];
type Construction = (typeof cableKitConstructions)[number];
/** Something to have at hand for a test or a repair. Lengths in metres; a cable without a construction is of passive copper. */
export type KitItem =
  | { kind: 'cable'; category: Category; lengthM: number; construction?: Construction | undefined }
  | { kind: 'coupler' | 'syncSwitch' | 'display' | 'source' | 'extenderPair' | 'powerSupply' };

/** Lengths that cables are commonly sold in, metres; common practice. Beyond the last, by the metre. */
const soldLengthsM = [1, 2, 3, 5, 7.5, 10, 12.5, 15, 20, 25, 30, 40, 50];

const lengthToBuyM = (lengthM: number): number =>
  soldLengthsM.find((sold) => sold >= lengthM) ?? Math.ceil(lengthM);

/** Certified for less than this, a cable proves nothing and repairs nothing; common practice, see the audit's rule. */
const atLeast = 'premiumHighSpeed';

/**
 * The cable that can stand in for a link: made like it, as long at least, of no lower category, and for 18 Gbit/s at least.
 * Past the length up to which passive copper of that category is counted on, an optical one.
 */
export function cableFor(link: Link): KitItem {
  if (link.construction === 'twistedPairExtender') return { kind: 'extenderPair' };
  const category = link.category === 'ultraHighSpeed' ? link.category : atLeast;
  const cable = { kind: 'cable', category, lengthM: lengthToBuyM(link.lengthM) } as const;
  if (link.construction !== 'passiveCopper') return { ...cable, construction: link.construction };
  const reachM = organisationDefaults.budget.passiveCopperReachM[category];
  return link.lengthM <= reachM ? cable : { ...cable, construction: 'activeOptical' };
}

/** A passive cable that passes every rate with certainty, for tests; common practice: at most about 4 m. */
export const shortCable: KitItem = { kind: 'cable', category: 'ultraHighSpeed', lengthM: 3 };

/**
 * Whether what is at hand holds an item, or a better one: a longer cable or one of a higher category will do, and an active
 * one in place of a passive one. A cable at hand of which nobody said how it is made is taken to be made as wanted.
 */
export function hasItem(kit: readonly KitItem[], wanted: KitItem): boolean {
  const rank = (category: Category) => linkCategories.indexOf(category);
  return kit.some((item) => {
    if (item.kind !== 'cable' || wanted.kind !== 'cable') return item.kind === wanted.kind;
    return (
      item.lengthM >= wanted.lengthM &&
      (item.construction ?? wanted.construction) === (wanted.construction ?? item.construction) &&
      item.category !== 'unknown' &&
      rank(item.category) >= rank(wanted.category)
    );
  });
}

/** One text for one thing to have at hand: for maps, sets and comparisons. */
export const kitKey = (item: KitItem): string =>
  item.kind === 'cable'
    ? ['cable', item.category, item.lengthM, item.construction ?? []].flat().join(' ')
    : item.kind;

const kitMessages = {
  coupler: message('kitCoupler'),
  syncSwitch: message('kitSyncSwitch'),
  display: message('kitDisplay'),
  source: message('kitSource'),
  extenderPair: message('kitExtenderPair'),
  powerSupply: message('kitPowerSupply'),
};

const cableCodes = { activeOptical: 'kitOpticalCable', activeCopper: 'kitActiveCopperCable' } as const;

/** An item in words, for a packing list. */
export function kitMessage(item: KitItem): Message {
  if (item.kind !== 'cable') return kitMessages[item.kind];
  const { lengthM, category, construction } = item;
  if (category === 'unknown') return message('kitCertifiedCable', { lengthM });
  return message(construction === undefined ? 'kitCable' : cableCodes[construction], { lengthM, category });
}
