import { findDevice, findLink, findPort, linkEnds } from '../../../shared/chain/graph.ts';
import { namedPlace } from '../../../shared/chain/named-place.ts';
import { samePlace } from '../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { ChangeKind, TriageRecord } from '../../../shared/contract/triage.ts';
import { changeKinds } from '../../../shared/contract/triage-names.ts';
import { type FaultTable, faultTable } from '../../../shared/isolation/fault-table.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { changesOfRound, standingSides } from '../record.ts';
import { segmentFor, segmentOf } from '../segment.ts';

import { type Caution, changeCatalogue } from './catalogue.ts';

import { deviceWhyNot, linkWhyNot, portWhyNot, type Scene } from './places.ts';

/** A change that makes sense on this chain with what is known of the side, and what to know before making it. */
export type ApplicableChange = {
  kind: ChangeKind;
  target: Place;
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

/** Kinds that can be done again at the same place after they were kept. */
const repeatable: readonly ChangeKind[] = ['reseat', 'replaceCable'];

function sceneOf(record: TriageRecord): Scene | null {
  const segment = segmentOf(record);
  return record.asFound === null || segment === null || standingSides(record).length === 0
    ? null
    : { chain: record.asFound.chain, segment, record };
}

const wasTried = (record: TriageRecord, kind: ChangeKind, target: Place): boolean =>
  changesOfRound(record).some(
    (change) => change.kind === kind && samePlace(change.target, target) && change.judgement !== null,
  );

/** Why a change does not apply at a place, null when it does. */
export function whyNotApplicable(record: TriageRecord, kind: ChangeKind, target: Place): Message | null {
  const scene = sceneOf(record);
  if (scene === null) return message('noSideForChange');
  const why = whyNotThere(scene, kind, target);
  return why === null && kind === 'updateFirmware'
    ? whyNotYet(scene, target, firstUntried(scene, candidates(scene)))
    : why;
}

const isKept = ({ record }: Scene, kind: ChangeKind, target: Place): boolean =>
  changesOfRound(record).some(
    (change) => change.kind === kind && change.status === 'kept' && samePlace(change.target, target),
  );

const doneTo = { device: 'doneToDevice', port: 'doneToPort', link: 'doneToLink' } as const;

function whyNotThere(scene: Scene, kind: ChangeKind, target: Place): Message | null {
  const { target: wanted } = changeCatalogue[kind];
  if (target.kind !== wanted) return message(doneTo[wanted], { change: kind });
  if (!repeatable.includes(kind) && isKept(scene, kind, target)) {
    return message('keptAlready');
  }
  const nothing = message('nothingUnderThatId');
  if (target.kind === 'link') {
    const link = findLink(scene.chain, target.linkId);
    return link === undefined ? nothing : (linkWhyNot[kind]?.(scene, link) ?? null);
  }
  const device = findDevice(scene.chain, target.deviceId);
  if (device === undefined) return nothing;
  if (target.kind === 'port') {
    const port = findPort(scene.chain, target);
    return port === undefined ? nothing : (portWhyNot[kind]?.(scene, { device, port }) ?? null);
  }
  return deviceWhyNot[kind]?.(scene, device) ?? null;
}

type Candidate = { kind: ChangeKind; target: Place };

/** Every change that applies, updates of firmware apart, kind by kind in the catalogue's order. */
const candidates = (scene: Scene): Candidate[] =>
  changeKinds
    .filter((kind) => kind !== 'updateFirmware')
    .flatMap((kind) => placesFor(scene, kind).map((target) => ({ kind, target })));

const firstUntried = ({ record }: Scene, of: readonly Candidate[]): Candidate | null =>
  of.find(({ kind, target }) => !wasTried(record, kind, target)) ?? null;

/** Firmware can't be taken back, so it comes last, unless the organisation's level asks for it anyway. */
function whyNotYet({ chain, record }: Scene, target: Place, untried: Candidate | null): Message | null {
  if (target.kind === 'device' && record.audit?.firmwareBelowLevel.includes(target.deviceId)) return null;
  return untried === null
    ? null
    : message('untriedFirst', { change: untried.kind, place: namedPlace(chain, untried.target) });
}

function everyPlace(chain: Chain, kind: 'device' | 'port' | 'link'): Place[] {
  if (kind === 'link') return chain.links.map((link) => ({ kind, linkId: link.id }));
  if (kind === 'device') return chain.devices.map((device) => ({ kind, deviceId: device.id }));
  return chain.devices.flatMap((device) =>
    device.ports.map((port): Place => ({ kind, deviceId: device.id, portId: port.id })),
  );
}

const placesFor = (scene: Scene, kind: ChangeKind): Place[] =>
  everyPlace(scene.chain, changeCatalogue[kind].target).filter(
    (place) => whyNotThere(scene, kind, place) === null,
  );

/**
 * Every change that applies now, kind by kind in the catalogue's order; none before a side is known.
 *
 * @param table the organisation's figures, for the minutes; the built-in ones when left out
 */
export function applicableChangesOf(
  record: TriageRecord,
  table: FaultTable = faultTable,
): ApplicableChange[] {
  const scene = sceneOf(record);
  if (scene === null) return [];
  const others = candidates(scene);
  const untried = firstUntried(scene, others);
  const updates = placesFor(scene, 'updateFirmware')
    .filter((target) => whyNotYet(scene, target, untried) === null)
    .map((target): Candidate => ({ kind: 'updateFirmware', target }));
  return [...others, ...updates].map((each) => describe(scene, each, table));
}

/**
 * Every change that could come to be made on a chain while no side is known: what would apply if the fault could lie
 * anywhere. For planning ahead, on the chain as found or, before that was recorded, as it was last described.
 *
 * @param table as for `applicableChangesOf`
 */
export function conceivableChangesOf(
  record: TriageRecord,
  chain: Chain,
  table: FaultTable = faultTable,
): ApplicableChange[] {
  const scene = { chain, segment: segmentFor(chain, standingSides(record)), record };
  return candidates(scene).map((each) => describe(scene, each, table));
}

function describe(
  { chain, record }: Scene,
  { kind, target }: Candidate,
  { changeMinutes }: FaultTable,
): ApplicableChange {
  const { diagnostic, needs, cautions } = changeCatalogue[kind];
  const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
  const pulled = kind === 'replaceCable' && link?.route === 'inConduit';
  const minutes = changeMinutes[pulled ? 'pullThroughConduit' : kind];
  return {
    kind,
    target,
    text: message('changeAt', { change: kind, place: namedPlace(chain, target) }),
    diagnostic,
    tried: wasTried(record, kind, target),
    needs: [...needs.map((need) => message(need)), ...needsAt(chain, kind, target)],
    caution: [...new Set([...cautions, ...cautionsAt(chain, kind, target)])].map((caution) =>
      message(caution),
    ),
    setupMin: figureOf(minutes, 'setup'),
    restoreMin: figureOf(minutes, 'restore'),
    instructions: message('changeInstructions', { change: kind }),
    afterwards: message('changeAfterwards', { change: kind }),
  };
}

function needsAt(chain: Chain, kind: ChangeKind, target: Place): Message[] {
  if (target.kind === 'link' && (kind === 'replaceCable' || kind === 'temporaryCable')) {
    const lengthM = findLink(chain, target.linkId)?.lengthM;
    return lengthM === undefined ? [] : [message('needCableAsLong', { lengthM })];
  }
  if (target.kind !== 'device' || kind !== 'substituteDisplay') return [];
  const versions = (findDevice(chain, target.deviceId)?.ports ?? []).map((port) => port.contentProtection);
  const known = [...new Set(versions)].filter((version) => version !== 'unknown' && version !== 'none');
  return known.map((version) => message('needContentProtection', { version }));
}

/** What the place itself adds: what hangs overhead, carries light, or lies in a wall. */
function cautionsAt(chain: Chain, kind: ChangeKind, target: Place): Caution[] {
  if (target.kind === 'link') {
    const link = findLink(chain, target.linkId);
    if (link === undefined) return [];
    const optical: Caution[] = link.construction === 'activeOptical' ? ['cautionOpticalLight'] : [];
    const overhead: Caution[] = linkEnds(chain, link)?.sink.role === 'display' ? ['cautionDisplay'] : [];
    const conduit: Caution[] =
      kind === 'replaceCable' && link.route === 'inConduit' ? ['cautionConduit'] : [];
    const wall: Caution[] = link.route === 'inWall' ? ['cautionCableInWall'] : [];
    return [...optical, ...overhead, ...conduit, ...wall];
  }
  const role = target.kind === 'port' ? findDevice(chain, target.deviceId)?.role : undefined;
  return role === 'display' && kind === 'movePort' ? ['cautionDisplay'] : [];
}
