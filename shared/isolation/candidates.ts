import { sourcesOf } from '../chain/graph.ts';
import { namedPlace } from '../chain/named-place.ts';
import { placeKey } from '../chain/place.ts';
import type { Place } from '../contract/chain.ts';
import type { ChangeKind } from '../contract/change.ts';
import type { OwnChange } from '../contract/own-change.ts';
import { type Message, message } from '../message/message.ts';
import { namedChange } from '../message/named-change.ts';
import { kitFor } from './change-at.ts';
import { clustersOf, clustersStanding, peopleFor, sparedMin } from './clusters.ts';
import { deviceKey } from './components.ts';
import type { TestKind } from './effect-table.ts';
import { figureIn, type Row } from './figures.ts';
import type { FaultModel } from './hypotheses.ts';
import { hasItem, type KitItem, kitMessage } from './kit.ts';
import { menuTells } from './menu-symptoms.ts';
import { testKey } from './test-record.ts';

/** A change that applies on this chain, with the minutes to make it and to put it back. */
export type ChangeOption = {
  kind: ChangeKind;
  target: Place;
  own?: OwnChange | null;
  setupMin: number;
  restoreMin: number;
};

/** What can be done next to tell suspects apart. */
export type Candidate = {
  /** Stable within a case: the kind and the place. */
  id: string;
  action:
    | { kind: 'test'; test: TestKind; target: Place; own?: OwnChange | null }
    | { kind: 'menu'; deviceId: string };
  setupMin: number;
  restoreMin: number;
  kit: readonly KitItem[];
  people: 1 | 2;
  /** Minutes that its risk is worth, over and above the work. */
  riskMin: number;
};

/** What is at hand on site, and what is allowed there. */
export type Circumstances = {
  /** Null: everything there is. */
  kit: readonly KitItem[] | null;
  people: 1 | 2;
  /** What the client won't have: kinds of test, places, or a kind at a place. */
  refused: readonly { test?: TestKind | 'menu'; place?: Place; ownKindId?: string }[];
};

/** The changes given, and the observations that this chain allows: menus of devices on the way, other sources. */
export function candidatesFor(model: FaultModel, options: readonly ChangeOption[]): Candidate[] {
  const { table, facts } = model;
  const standing = clustersStanding(facts);
  const changes = options
    .filter(({ kind }) => kind !== 'otherSource')
    .map(
      ({ kind, target, own = null, setupMin, restoreMin }): Candidate => ({
        id: testKey(kind, target, own),
        action: { kind: 'test', test: kind, target, own },
        setupMin: setupMin - sparedMin(setupMin, clustersOf(facts.chain, { test: kind, target }), standing),
        restoreMin,
        kit: kitFor(facts.chain, kind, target),
        people: peopleFor(facts.chain, { test: kind, target }),
        riskMin: figureIn(table.effort.riskMin, kind) ?? 0,
      }),
    );
  return [...changes, ...menuCandidates(model), ...sourceCandidates(model, options)];
}

const minutesOf = (row: Row): Pick<Candidate, 'setupMin' | 'restoreMin'> => ({
  setupMin: figureIn(row, 'setup') ?? 0,
  restoreMin: figureIn(row, 'restore') ?? 0,
});

/** Id of the candidate that watches with a device's menu up. */
export const menuKey = (deviceId: string): string => `menu ${deviceKey(deviceId)}`;

function menuCandidates({ facts, scope, table }: FaultModel): Candidate[] {
  if (!menuTells.includes(facts.symptom.kind)) return [];
  const onTheWay = facts.chain.devices.filter(
    ({ id, drawsMenu }) => drawsMenu && scope.path.has(deviceKey(id)),
  );
  return onTheWay.map(({ id }) => ({
    id: menuKey(id),
    action: { kind: 'menu', deviceId: id },
    ...minutesOf(table.effort.menu),
    kit: [],
    people: 1,
    riskMin: 0,
  }));
}

/** Another source of the chain, unless the client has told already which of them show it; and a brought one. */
function sourceCandidates(
  { facts, scope, table }: FaultModel,
  options: readonly ChangeOption[],
): Candidate[] {
  const applies = (id: string) =>
    options.some(({ kind, target }) => kind === 'otherSource' && placeKey(target) === deviceKey(id));
  const sources = sourcesOf(facts.chain)
    .map(({ id }) => id)
    .filter(applies);
  const others = facts.affectedSources.length > 0 ? [] : sources;
  const installed = others.length > 1 ? others : [];
  const brought = scope.affected.length === 1 ? scope.affected.filter(applies) : [];
  const candidate = (deviceId: string, row: Row, kit: KitItem[]): Candidate => ({
    id: testKey('otherSource', { kind: 'device', deviceId }),
    action: { kind: 'test', test: 'otherSource', target: { kind: 'device', deviceId } },
    ...minutesOf(row),
    kit,
    people: 1,
    riskMin: 0,
  });
  return [
    ...installed.map((id) => candidate(id, table.effort.installedSource, [])),
    ...brought.map((id) => candidate(id, table.effort.broughtSource, [{ kind: 'source' }])),
  ];
}

/** Why a candidate can't be done here and now; null when it can. */
export function whyNotHere(candidate: Candidate, here: Circumstances): Message | null {
  const { action } = candidate;
  const name = action.kind === 'menu' ? 'menu' : action.test;
  const at: Place = action.kind === 'menu' ? { kind: 'device', deviceId: action.deviceId } : action.target;
  const isRefused = here.refused.some(
    ({ test, place, ownKindId }) =>
      (test === undefined || test === name) &&
      (ownKindId === undefined || (action.kind === 'test' && ownKindId === action.own?.id)) &&
      (place === undefined || placeKey(place) === placeKey(at)),
  );
  if (isRefused) return message('clientRefuses');
  if (candidate.people > here.people) return message('secondPersonNeeded');
  const missing = here.kit === null ? [] : candidate.kit.filter((item) => !hasItem(here.kit ?? [], item));
  return missing.length === 0 ? null : message('notAtHand', { kit: missing.map(kitMessage) });
}

/** What to do, as an order without a full stop. */
export function candidateOrder(model: FaultModel, { action }: Candidate): Message {
  if (action.kind === 'test') return testOrder(model, action);
  const place = namedPlace(model.facts.chain, { kind: 'device', deviceId: action.deviceId });
  return message('watchWithMenuUp', { place });
}

/** A change, or playing another source, as an order without a full stop. */
export function testOrder(
  { facts: { chain }, scope }: FaultModel,
  { test, target, own }: { test: TestKind; target: Place; own?: OwnChange | null | undefined },
): Message {
  const place = namedPlace(chain, target);
  const isUsual =
    scope.affected.length === 1 && target.kind === 'device' && scope.affected.includes(target.deviceId);
  return test === 'otherSource' && isUsual
    ? message('playBroughtSource', { place })
    : message('changeOrder', { change: namedChange({ kind: test, own }), place });
}
