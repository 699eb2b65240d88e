import type { Chain } from '../../../shared/contract/chain.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { ChangeRecord, TriageRecord } from '../../../shared/contract/triage.ts';
import { faultTable } from '../../../shared/isolation/fault-table.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import {
  type Case,
  type ChangeOption,
  type Circumstances,
  type FaultTable,
  type PartsAsked,
  type PlanInput,
  partsWithin,
  type Standing,
  standingOf,
  unitsPerAsk,
  type WorkMeter,
  workLimits,
} from '../../../shared/isolation/index.ts';
import { changesConceivable, changesNow } from '../changes/applicable.ts';
import type { PossibleChange } from '../changes/described.ts';
import { asksAt } from '../changes/places.ts';
import { stateName, type TriageSnapshot } from '../evolve.ts';
import { once } from '../once.ts';
import { changeInPlace, changesOfRound, isSideSettled } from '../record.ts';
import { whyNoProof } from '../rules/culprit.ts';
import { caseOf } from './case-of.ts';
import type { Known } from './known.ts';
import { menusLeft } from './menus.ts';
import { isWorthProposing } from './proposable.ts';
import { isOfOnePart } from './shown-part.ts';

export type PlanRequest = {
  known: Known;
  /** The newest version that the chain is described in. */
  chainVersion: number;
  here: Circumstances;
  /** The organisation's figures; the built-in ones when left out. */
  table?: FaultTable;
  /** The organisation's own kinds of change. */
  ownChanges?: readonly OwnChange[];
  /** UTC, ISO 8601. */
  now: string;
  /** Counts the work that planning does. */
  meter?: WorkMeter;
};

/** A request with what every part of its answer is made from, reckoned once; what not every stage asks for, once it is. */
export type Asked = PlanRequest & {
  record: TriageRecord;
  state: string;
  facts: Case;
  standing: Standing;
  /** With a side, what applies now; before that, what could come to apply. Without what was found to lead nowhere. */
  changes: readonly PossibleChange[];
  /** The parts of the chain that these were looked for at, and how many were not looked for elsewhere. */
  asking: PartsAsked;
  /** Devices whose menu can still tell something. */
  menus: readonly string[];
  /** A change to one part has shown a culprit in this round. */
  isShown: boolean;
};

export function askedOf(snapshot: TriageSnapshot, request: PlanRequest): Asked {
  const record = snapshot.context;
  const { known, table } = request;
  const facts = caseOf(record, known);
  const standing = standingOf(facts, table);
  const asking = once(() => askingWithin(facts.chain, standing, request));
  const changes = once(() => changesAhead(record, request, asking()));
  const menus = once(() => menusLeft(record, facts.chain, standing));
  return {
    ...request,
    record,
    state: stateName(snapshot),
    facts,
    standing,
    get changes() {
      return changes();
    },
    get asking() {
      return asking();
    },
    get menus() {
      return menus();
    },
    isShown: changesOfRound(record).some((change) => whyNoProof(change) === null && isOfOnePart(change.kind)),
  };
}

function askingWithin(chain: Chain, standing: Standing, { ownChanges = [], meter }: PlanRequest): PartsAsked {
  const within = partsWithin(standing, { asksAt: asksAt(chain, ownChanges), work: workLimits.asking });
  meter?.add(within.asked * unitsPerAsk);
  return within;
}

function changesAhead(
  record: TriageRecord,
  { known, table, ownChanges }: PlanRequest,
  { parts }: PartsAsked,
): PossibleChange[] {
  const maySwap = record.asFound !== null && isSideSettled(record);
  const changes = maySwap
    ? changesNow(record, { table, ownChanges, parts })
    : changesConceivable(record, known.chain, { table, ownChanges, parts });
  return changes.filter((change) => isWorthProposing(record, change));
}

/** What the planner is asked; with fewer changes than apply, only among those. */
export function inputOf(
  { record, facts, standing, here, table, menus, asking, meter }: Asked,
  changes: readonly ChangeOption[],
): PlanInput {
  const change = changeInPlace(record);
  return {
    facts,
    standing,
    changes,
    here,
    menus,
    meter,
    unasked: asking.unasked,
    inPlace: change === null ? null : placed(change),
    terms: { risk: record.settings.risk, escalationMin: escalationMin(record, table) },
    ...(table === undefined ? {} : { table }),
  };
}

/** A case that second line gave back is no quicker with them: looking on may take so many times as long. Assumed. */
const onceGivenBack = 4;

function escalationMin({ escalations }: TriageRecord, table: FaultTable = faultTable): number {
  const wasGivenBack = escalations.some(({ outcome }) => outcome?.kind === 'handedBack');
  return figureOf(table.planning.escalation, 'minutes') * (wasGivenBack ? onceGivenBack : 1);
}

const placed = ({ kind, target, own }: ChangeRecord) => ({ kind, target, own });
