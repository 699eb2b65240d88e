import type { Chain, Device, Link, Place, Port } from '../contract/chain.ts';
import type { ChangeKind } from '../contract/change.ts';
import type { clientWays } from '../contract/triage-names.ts';
import type { cautionCodes } from '../message/codes/cautions.ts';
import type { needCodes } from '../message/codes/changes.ts';
import type { phoneCodes } from '../message/codes/phone.ts';
import type { Message } from '../message/message.ts';
import type { ComponentKey, Components, Scope } from './components.ts';
import type { FailureMode } from './failure-modes.ts';
import { assumed, type Row } from './figures.ts';
import type { KitItem } from './kit.ts';

/**
 * Which parts a change does something to, seen from its target. `ends`: the devices a link joins, the links at a
 * device. `between`: the stretch that the change takes out of the way of the picture. `anywhere`: every device and
 * cable on the way of the picture. `whole`: what the chain as a whole can have at fault. `passedLess`, `passedNotKnown`:
 * the same as `anywhere`, where another source sends less than the usual ones, or nobody said what it sends.
 */
export type Reach =
  | 'target'
  | 'ends'
  | 'between'
  | 'upstream'
  | 'downstream'
  | 'anywhere'
  | 'whole'
  | 'passedLess'
  | 'passedNotKnown';
/** `any` holds for every mode that has no figure of its own. */
export type EffectColumn = FailureMode | 'any';
export type EffectRow = Row<EffectColumn>;

/** Needs that say all by their code; those that depend on the place come from `needsAt`. */
export type Need = Exclude<keyof typeof needCodes, 'needCableAsLong' | 'needContentProtection'>;
export type Caution = keyof typeof cautionCodes;

export type ClientWay = (typeof clientWays)[number];
/** Why a client is not asked to, by phone. */
export type NotByPhone = keyof typeof phoneCodes;

/** What decides where a change applies: the chain as found, and what is known of the fault so far. */
export type Scene = {
  readonly chain: Chain;
  /** Ids of what can still be at fault; of a device at the edge, one half only. */
  readonly segment: {
    readonly deviceIds: readonly string[];
    readonly linkIds: readonly string[];
    readonly inputHalfIds: readonly string[];
    readonly outputHalfIds: readonly string[];
  };
  /** Devices at whose menus a side was concluded. */
  readonly sideIds: readonly string[];
  /** Sockets that somebody has looked at in the device's menu, as `placeKey` gives them. */
  readonly lookedAtPorts: readonly string[];
  /** Devices of which earlier settings are known. */
  readonly settingsKnownIds: readonly string[];
};
export type PortAt = { device: Device; port: Port };
export type PlaceAt = { chain: Chain; place: Place };
type Targets = { device: Device; port: PortAt; link: Link; chain: Chain; place: PlaceAt };

/** What is known of a kind of change whatever the chain, all but what it is called. */
type Facts<Kind extends keyof Targets> = {
  /** The kind of place that it is made to. */
  target: Kind;
  /** Why it makes no sense at a place; null when it does. */
  whyNot: (scene: Scene, target: Targets[Kind]) => Message | null;
  /** Who says what it is: other than this program, it is known by its words alone, and proposed to nobody by us. */
  describedBy: 'program' | 'whoDeclares' | 'organisation';
  /** Has to be put back; other kinds may stay once they cleared the fault, and so can be its repair. */
  diagnostic: boolean;
  /** Puts right what is wrong anyway: may stay whatever the retest says. */
  plainCorrection: boolean;
  /** Rules of the audit whose finding, made to the same place, it puts right; nothing that can't be undone does. */
  mends: readonly string[];
  /** Can be put back at all. */
  canBeUndone: boolean;
  /** Can be done again at the same place after it was kept. */
  canBeRepeated: boolean;
  /** A fault that it clears names a culprit. */
  showsCulprit: boolean;
  /** What to have at hand, in words; and what the place adds to it. */
  needs: readonly Need[];
  needsAt: (target: Targets[Kind]) => Message[];
  /** The same as things to pack. */
  kit: readonly KitItem[] | ((target: Targets[Kind]) => KitItem[]);
  cautions: readonly Caution[];
  cautionsAt: (target: Targets[Kind]) => Caution[];
  people: 1 | 2;
  /** How a client can do it when told by phone, and undo it without seeing anything; or why nobody asks them to. */
  byClient: ClientWay | NotByPhone;
  /** Minutes to make it and to put it back. */
  minutes: Row<'setup' | 'restore'>;
  /** Takes longer where the cable has to be pulled through a conduit. */
  isPulled: boolean;
  /** What it would show can be asked first: whether another display or source shows the fault at the same moment. */
  asksWitnessFirst: boolean;
  /** Minutes that a mishap is worth on average: a spoilt device, a fall, a display dropped; assumed. Null: none. */
  riskMin: number | null;
  /**
   * Chance that a fault of a mode stays away while the change is in place, because of the change. Certainty (1) is
   * left out on purpose: a spare cable can be bad too.
   */
  effects: Partial<Record<Reach, EffectRow>>;
  /** Chance that it brings a fault of a mode on where it is there: told by the fault coming, not by its staying away. */
  provokes: Partial<Record<Reach, EffectRow>>;
  /** Minutes of watching what it brings on; null: as long as a quiet retest takes. */
  provokingMin: number | null;
  /** A kind that need not be made any more where this one was: what it does is done with it. */
  countsAs: ChangeKind | null;
  /** The stretch that it takes out of the way of the picture. */
  takesOut: (components: Components, scope: Scope, target: Place) => ComponentKey[];
  /** Reaches downstream only where the device passes on what it gets. */
  isPassedOn: boolean;
  /** Devices are off for a while on the way, so that they warm up anew. */
  switchesOff: boolean;
  /** Touches settings of the device; `usual`: the one that it is mostly about, and what that becomes. */
  settings: { usual: { about: RegExp; to: string } | null } | null;
};
export type ChangeFacts = { [Kind in keyof Targets]: Facts<Kind> }[keyof Targets];

type Needed = 'whyNot' | 'minutes' | 'effects';
type Given<Kind extends keyof Targets> = Partial<Facts<Kind>> & Pick<Facts<Kind>, Needed>;

/** A kind of change made to one kind of place: what is left out is for finding the fault only, simple and without risk. */
export const changeTo =
  <Kind extends keyof Targets>(target: Kind) =>
  (given: Given<Kind>): Facts<Kind> => ({
    target,
    describedBy: 'program',
    diagnostic: true,
    plainCorrection: false,
    mends: [],
    canBeUndone: true,
    canBeRepeated: false,
    showsCulprit: true,
    needs: [],
    needsAt: () => [],
    kit: [],
    cautions: [],
    cautionsAt: () => [],
    people: 1,
    byClient: 'phoneTakesTechnician',
    isPulled: false,
    asksWitnessFirst: false,
    riskMin: null,
    provokes: {},
    provokingMin: null,
    countsAs: null,
    takesOut: () => [],
    isPassedOn: false,
    switchesOff: false,
    settings: null,
    ...given,
  });

/** It may stay once it cleared the fault. */
export const mayStay = { diagnostic: false } as const;
/** It may stay whatever the retest says. */
export const correction = { diagnostic: false, plainCorrection: true } as const;

export const minutes = (setup: number, restore: number) => assumed({ setup, restore });
