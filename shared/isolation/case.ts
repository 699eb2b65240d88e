import type { Chain, Finding, Place } from '../contract/chain.ts';
import type { OwnChange } from '../contract/own-change.ts';
import type { contentKinds, Symptom, WhatChanged } from '../contract/triage.ts';
import type { FactKind, TestKind } from './effect-table.ts';
import type { WatchRecord } from './quiet-length.ts';

/** A finding of the prerequisite audit; its text stands in the explanation. */
export type FindingInput = Pick<Finding, 'rule' | 'place' | 'severity' | 'text'>;
/** Headroom of the budget on a link: what it carries over what the wanted format needs, less one; -0.42 is 42 % short. */
export type HeadroomInput = { linkId: string; headroomFraction: number };
/** What changed before the fault came; with a place where it is known. */
export type ChangedInput = { kind: WhatChanged['kind']; place?: Place };

/**
 * Why a result counts for less than one of a change that was declared first and watched in this round: it was entered
 * afterwards; it is of a round before the ticket was reopened or the fault came back; or there were perhaps two faults, so
 * that the other one was there whatever was done about this one.
 */
export type Trust = 'enteredLate' | 'earlierRound' | 'perhapsTwo';

/** One thing that was seen, in the order in which it was; without a trust of its own it counts in full. */
export type Result = Seen & { trust?: Trust };

type Seen =
  /** One occurrence with a device's menu up. */
  | { kind: 'menu'; deviceId: string; answer: 'stayed' | 'vanished' }
  /**
   * A watch with a change in place, or with another source playing (`otherSource`: the target is the source that
   * plays; a brought one stands in the place of the usual one and is called by its id).
   */
  | { kind: 'test'; test: TestKind; target: Place; own?: OwnChange | null; watch: WatchRecord }
  /** The same without a doubt about the outcome: re-issued hot plug brought the picture back, or it did not. */
  | {
      kind: 'outcome';
      test: TestKind;
      target: Place;
      own?: OwnChange | null;
      outcome: 'cleared' | 'persists';
    }
  /** A watch after a change was undone. */
  | { kind: 'putBack'; test: TestKind; target: Place; own?: OwnChange | null; watch: WatchRecord }
  /** What a device's page says of what it receives or sends while the fault is there: as it should be, or not. */
  | { kind: 'reading'; deviceId: string; at: 'receives' | 'sends'; says: 'right' | 'wrong' }
  /** Whether another display, or source, shows it at the same moment as the one beside it. */
  | { kind: 'witness'; deviceId: string; besideId: string; shows: boolean }
  /** Something an EDID or a log says, or a look at a setting. */
  | { kind: 'fact'; fact: FactKind; place: Place };

/** All that is known of a fault on one chain. */
export type Case = {
  chain: Chain;
  symptom: Symptom;
  /** Ids of the sources that show it, as far as the client can tell; empty: not known. The others don't show it. */
  affectedSources: readonly string[];
  /** Ids of the displays that show it; empty: not known. */
  affectedDisplays: readonly string[];
  /** With what content it shows. */
  content: (typeof contentKinds)[number] | 'notKnown';
  workedBefore: boolean | null;
  whatChanged: readonly ChangedInput[];
  findings: readonly FindingInput[];
  headroom: readonly HeadroomInput[];
  /** Today, as an ISO date, for the age of cables; null leaves age out. */
  today: string | null;
  /** The watch that reproduced the fault, all such watches added up; null when it wasn't seen yet. */
  baseline: WatchRecord | null;
  results: readonly Result[];
};

/** A case of which nothing is known but the chain and the symptom. */
export function plainCase(chain: Chain, symptom: Symptom): Case {
  return {
    chain,
    symptom,
    affectedSources: [],
    affectedDisplays: [],
    content: 'notKnown',
    workedBefore: null,
    whatChanged: [],
    findings: [],
    headroom: [],
    today: null,
    baseline: null,
    results: [],
  };
}
