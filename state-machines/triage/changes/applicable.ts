import { findLink } from '../../../shared/chain/graph.ts';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import { placeKey, samePlace } from '../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { ChangeKind, TriageRecord } from '../../../shared/contract/triage.ts';
import { changeKinds } from '../../../shared/contract/triage-names.ts';
import { kitFor, whyNotAt } from '../../../shared/isolation/change-at.ts';
import { changeCatalogue, kindsCountedAs } from '../../../shared/isolation/change-catalogue.ts';
import type { Scene } from '../../../shared/isolation/change-facts.ts';
import { type FaultTable, faultTable } from '../../../shared/isolation/fault-table.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { namedChange } from '../../../shared/message/named-change.ts';
import { chainAsSeen } from '../looks.ts';
import { changesOfRound, isSideSettled, standingEvidence, standingLooks, standingSides } from '../record.ts';
import { type Segment, segmentFor, segmentOf } from '../segment.ts';
import { type ApplicableChange, describedChange, type PossibleChange } from './described.ts';
import { type Made, ownIn, whyNotOwn } from './own.ts';
import { type Parts, placesAt } from './places.ts';

/** Figures of an organisation, and its own kinds of change. */
type Figures = { table?: FaultTable | undefined; ownChanges?: readonly OwnChange[] | undefined };
/** The same, and the parts of the chain that changes are looked for at; all of them when left out. */
type Within = Figures & { parts?: Parts };

/** What decides where a change applies, and the record it comes from. */
type Known = Scene & { record: TriageRecord; parts: Parts };

function sceneOf(record: TriageRecord, parts: Parts = null): Known | null {
  const segment = segmentOf(record);
  return record.asFound === null || segment === null || !isSideSettled(record)
    ? null
    : { ...sceneWith(record, chainAsSeen(record, record.asFound.chain), segment), parts };
}

const sceneWith = (record: TriageRecord, chain: Chain, segment: Segment): Omit<Known, 'parts'> => ({
  chain,
  segment,
  sideIds: standingSides(record).map(({ deviceId }) => deviceId),
  lookedAtPorts: standingLooks(record, 'portMode').map(({ what: { deviceId, portId } }) =>
    placeKey({ kind: 'port', deviceId, portId }),
  ),
  settingsKnownIds: settingsKnownIds(record, chain),
  record,
});

/** Where a setting was changed before the fault came, what it was can be asked of every device. */
function settingsKnownIds(record: TriageRecord, chain: Chain): string[] {
  if (record.whatChanged?.answers.some(({ kind }) => kind === 'setting'))
    return chain.devices.map(({ id }) => id);
  return standingEvidence(record)
    .flatMap(({ kind, tie }) => (kind === 'settings' && tie.deviceId !== null ? [tie.deviceId] : []))
    .concat(lookedWrongIds(record));
}

/** Devices of which a setting was found to be other than it should be. */
const lookedWrongIds = (record: TriageRecord): string[] =>
  standingLooks(record, 'setting').flatMap(({ what: { deviceId, value, shouldBe } }) =>
    shouldBe !== null && shouldBe !== value ? [deviceId] : [],
  );

/** Made and judged, itself or with another change that does the same on the way. */
const wasTried = (record: TriageRecord, { kind, target, own }: Made): boolean =>
  changesOfRound(record).some(
    (change) =>
      (change.kind === kind || kindsCountedAs[kind].includes(change.kind)) &&
      change.own?.id === own?.id &&
      samePlace(change.target, target) &&
      change.judgement !== null,
  );

/** Why a change does not apply at a place, null when it does. */
export function whyNotApplicable(record: TriageRecord, { kind, target, own }: Made): Message | null {
  const scene = sceneOf(record);
  if (scene === null) return message('noSideForChange');
  const why = whyNotThere(scene, kind, target) ?? (own == null ? null : whyNotOwn(scene, own, target));
  return why === null && kind === 'updateFirmware' ? whyNotYet(scene, target, candidates(scene)) : why;
}

const isKept = ({ record }: Known, kind: ChangeKind, target: Place): boolean =>
  changesOfRound(record).some(
    (change) => change.kind === kind && change.status === 'kept' && samePlace(change.target, target),
  );

function whyNotThere(scene: Known, kind: ChangeKind, target: Place): Message | null {
  return !changeCatalogue[kind].canBeRepeated && isKept(scene, kind, target)
    ? message('keptAlready')
    : whyNotAt(scene, kind, target);
}

/** Every change that applies, updates of firmware apart, kind by kind in the catalogue's order. */
const candidates = (scene: Known): Made[] =>
  changeKinds
    .filter((kind) => kind !== 'updateFirmware')
    .flatMap((kind) => placesFor(scene, kind).map((target) => ({ kind, target })));

/**
 * Firmware can't be taken back, so at a device it comes last, unless the organisation's level asks for it anyway. What
 * may not be at hand, and what only brings a fault on, it doesn't wait for.
 */
function whyNotYet({ chain, record }: Known, target: Place, others: readonly Made[]): Message | null {
  if (target.kind !== 'device' || record.audit?.firmwareBelowLevel.includes(target.deviceId)) return null;
  const untried = others.find(
    (each) =>
      isAt(chain, each.target, target.deviceId) &&
      changeCatalogue[each.kind].provokingMin === null &&
      kitFor(chain, each.kind, each.target).length === 0 &&
      !wasTried(record, each),
  );
  return untried === undefined
    ? null
    : message('untriedFirst', { change: namedChange(untried), place: namedPlace(chain, untried.target) });
}

/** A device, a port of it, or a cable at it. */
function isAt(chain: Chain, place: Place, deviceId: string): boolean {
  if (place.kind !== 'link') return place.kind !== 'chain' && place.deviceId === deviceId;
  const link = findLink(chain, place.linkId);
  return link?.from.deviceId === deviceId || link?.to.deviceId === deviceId;
}

const placesFor = (scene: Known, kind: ChangeKind): Place[] =>
  placesAt(scene.chain, changeCatalogue[kind].target, scene.parts).filter(
    (place) => whyNotThere(scene, kind, place) === null,
  );

/**
 * Every change that applies now, kind by kind in the catalogue's order; none before a side is known.
 *
 * @param figures the organisation's, for the minutes, and its own kinds; the built-in ones when left out
 */
export function changesNow(
  record: TriageRecord,
  { table = faultTable, ownChanges = [], parts = null }: Within = {},
): PossibleChange[] {
  const scene = sceneOf(record, parts);
  if (scene === null) return [];
  const others = [...candidates(scene), ...ownIn(scene, ownChanges)];
  const updates = placesFor(scene, 'updateFirmware')
    .filter((target) => whyNotYet(scene, target, others) === null)
    .map((target): Made => ({ kind: 'updateFirmware', target }));
  return [...others, ...updates].map((each) => withMinutes(scene, each, table));
}

/** A change that applies now; null where none does. */
export function firstApplicable(record: TriageRecord): { kind: ChangeKind; target: Place } | null {
  const scene = sceneOf(record);
  if (scene === null) return null;
  // An update of firmware waits for the others, so that it is asked for where none of them applies.
  const inOrder = [...changeKinds.filter((kind) => kind !== 'updateFirmware'), 'updateFirmware' as const];
  for (const kind of inOrder) {
    const target = placesAt(scene.chain, changeCatalogue[kind].target, null).find(
      (place) => whyNotThere(scene, kind, place) === null,
    );
    if (target !== undefined) return { kind, target };
  }
  return null;
}

/**
 * Every change that could come to be made on a chain while no side is known: what would apply if the fault could lie
 * anywhere. For planning ahead, on the chain as found or, before that was recorded, as it was last described.
 *
 * @param figures as for `changesNow`
 */
export function changesConceivable(
  record: TriageRecord,
  chain: Chain,
  { table = faultTable, ownChanges = [], parts = null }: Within = {},
): PossibleChange[] {
  const seen = chainAsSeen(record, chain);
  const scene = { ...sceneWith(record, seen, segmentFor(chain, standingSides(record))), parts };
  return [...candidates(scene), ...ownIn(scene, ownChanges)].map((each) => withMinutes(scene, each, table));
}

function withMinutes(
  { chain, record }: Known,
  { kind, target, own = null }: Made,
  { changeMinutes }: FaultTable,
): PossibleChange {
  const made = { kind, target, own };
  const tried = wasTried(record, made);
  if (own !== null) return { ...made, tried, setupMin: own.setupMin, restoreMin: own.restoreMin };
  const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
  const pulled = changeCatalogue[kind].isPulled && link?.route === 'inConduit';
  const minutes = changeMinutes[pulled ? 'pullThroughConduit' : kind];
  return { ...made, tried, setupMin: figureOf(minutes, 'setup'), restoreMin: figureOf(minutes, 'restore') };
}

/** As `changesNow`, each with what to know before making it. */
export function applicableChangesOf(record: TriageRecord, figures?: Figures): ApplicableChange[] {
  const { asFound } = record;
  if (asFound === null) return [];
  const chain = chainAsSeen(record, asFound.chain);
  return changesNow(record, figures).map((change) => describedChange(chain, change));
}

/** As `changesConceivable`, each with what to know before making it. */
export function conceivableChangesOf(
  record: TriageRecord,
  chain: Chain,
  figures?: Figures,
): ApplicableChange[] {
  const seen = chainAsSeen(record, chain);
  return changesConceivable(record, chain, figures).map((change) => describedChange(seen, change));
}
