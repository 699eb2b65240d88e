import { findLink, linkEnds } from '../../../shared/chain/graph.ts';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import { placeKey, samePlace } from '../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { ChangeKind, TriageRecord } from '../../../shared/contract/triage.ts';
import { changeKinds } from '../../../shared/contract/triage-names.ts';
import { cautionsAt, kitFor, needsAt, whyNotAt } from '../../../shared/isolation/change-at.ts';
import { changeCatalogue, kindsCountedAs } from '../../../shared/isolation/change-catalogue.ts';
import type { Caution, Scene } from '../../../shared/isolation/change-facts.ts';
import { type FaultTable, faultTable } from '../../../shared/isolation/fault-table.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { namedChange } from '../../../shared/message/named-change.ts';
import { chainAsSeen } from '../looks.ts';
import { changesOfRound, isSideSettled, standingEvidence, standingLooks, standingSides } from '../record.ts';
import { type Segment, segmentFor, segmentOf } from '../segment.ts';
import { describeOwn, type Made, ownIn, whyNotOwn } from './own.ts';
import { everyPlace } from './places.ts';

/** A change that makes sense on this chain with what is known of the side, and what to know before making it. */
export type ApplicableChange = {
  kind: ChangeKind;
  target: Place;
  /** Of an organisation's own kind, what it says of it; null for every other. */
  own: OwnChange | null;
  /** What it is, and where. */
  text: Message;
  /** Has to be put back; other kinds may stay once they cleared the fault. */
  diagnostic: boolean;
  /** Was made and judged in this round already. */
  tried: boolean;
  needs: Message[];
  caution: Message[];
  /** Minutes, by the figures of the fault table. */
  setupMin: number;
  restoreMin: number;
  instructions: Message;
  afterwards: Message;
};

/** Figures of an organisation, and its own kinds of change. */
type Figures = { table?: FaultTable | undefined; ownChanges?: readonly OwnChange[] | undefined };

/** What decides where a change applies, and the record it comes from. */
type Known = Scene & { record: TriageRecord };

function sceneOf(record: TriageRecord): Known | null {
  const segment = segmentOf(record);
  return record.asFound === null || segment === null || !isSideSettled(record)
    ? null
    : sceneWith(record, chainAsSeen(record, record.asFound.chain), segment);
}

const sceneWith = (record: TriageRecord, chain: Chain, segment: Segment): Known => ({
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
  everyPlace(scene.chain, changeCatalogue[kind].target).filter(
    (place) => whyNotThere(scene, kind, place) === null,
  );

/**
 * Every change that applies now, kind by kind in the catalogue's order; none before a side is known.
 *
 * @param figures the organisation's, for the minutes, and its own kinds; the built-in ones when left out
 */
export function applicableChangesOf(
  record: TriageRecord,
  { table = faultTable, ownChanges = [] }: Figures = {},
): ApplicableChange[] {
  const scene = sceneOf(record);
  if (scene === null) return [];
  const others = [...candidates(scene), ...ownIn(scene, ownChanges)];
  const updates = placesFor(scene, 'updateFirmware')
    .filter((target) => whyNotYet(scene, target, others) === null)
    .map((target): Made => ({ kind: 'updateFirmware', target }));
  return [...others, ...updates].map((each) => describe(scene, each, table));
}

/** A change that applies now; null where none does. */
export function firstApplicable(record: TriageRecord): { kind: ChangeKind; target: Place } | null {
  const scene = sceneOf(record);
  if (scene === null) return null;
  // An update of firmware waits for the others, so that it is asked for where none of them applies.
  const inOrder = [...changeKinds.filter((kind) => kind !== 'updateFirmware'), 'updateFirmware' as const];
  for (const kind of inOrder) {
    const target = everyPlace(scene.chain, changeCatalogue[kind].target).find(
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
 * @param figures as for `applicableChangesOf`
 */
export function conceivableChangesOf(
  record: TriageRecord,
  chain: Chain,
  { table = faultTable, ownChanges = [] }: Figures = {},
): ApplicableChange[] {
  const seen = chainAsSeen(record, chain);
  const scene = sceneWith(record, seen, segmentFor(chain, standingSides(record)));
  return [...candidates(scene), ...ownIn(scene, ownChanges)].map((each) => describe(scene, each, table));
}

function describe(
  { chain, record }: Known,
  { kind, target, own = null }: Made,
  { changeMinutes }: FaultTable,
): ApplicableChange {
  if (own !== null) {
    const made = { kind, target, own };
    return { ...describeOwn(chain, made), caution: careFor(chain, made), tried: wasTried(record, made) };
  }
  const { diagnostic, needs, isPulled } = changeCatalogue[kind];
  const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
  const pulled = isPulled && link?.route === 'inConduit';
  const minutes = changeMinutes[pulled ? 'pullThroughConduit' : kind];
  return {
    kind,
    target,
    own: null,
    text: message('changeAt', { change: kind, place: namedPlace(chain, target) }),
    diagnostic,
    tried: wasTried(record, { kind, target }),
    needs: [...needs.map((need) => message(need)), ...needsAt(chain, kind, target)],
    caution: careFor(chain, { kind, target }),
    setupMin: figureOf(minutes, 'setup'),
    restoreMin: figureOf(minutes, 'restore'),
    instructions: message('changeInstructions', { change: kind }),
    afterwards: message('changeAfterwards', { change: kind }),
  };
}

/** What to take care of: what an organisation says of its own kind, then what kind and place ask for. */
export function careFor(chain: Chain, { kind, target, own }: Made): Message[] {
  const said = own == null || own.caution === '' ? [] : [message('asWritten', { sentence: own.caution })];
  const codes = new Set([...changeCatalogue[kind].cautions, ...cautionsThere(chain, kind, target)]);
  return [...said, ...[...codes].map((code) => message(code))];
}

/** What the place itself adds, for any change and for this one: what hangs overhead, carries light, or lies in a wall. */
function cautionsThere(chain: Chain, kind: ChangeKind, target: Place): Caution[] {
  const own = cautionsAt(chain, kind, target);
  const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
  if (link === undefined) return own;
  const optical: Caution[] = link.construction === 'activeOptical' ? ['cautionOpticalLight'] : [];
  // What is done from the floor alone is never told with a ladder.
  const fromFloor = changeCatalogue[kind].cautions.includes('cautionFlexByHand');
  const isAtDisplay = linkEnds(chain, link)?.sink.role === 'display';
  const overhead: Caution[] = isAtDisplay && !fromFloor ? ['cautionDisplay'] : [];
  const wall: Caution[] = link.route === 'inWall' ? ['cautionCableInWall'] : [];
  return [...optical, ...overhead, ...own, ...wall];
}
