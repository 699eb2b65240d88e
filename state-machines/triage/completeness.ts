import { downstreamOf, findDevice, linksInto, linksOutOf, upstreamOf } from '../../shared/chain/graph.ts';
import { namedPlace } from '../../shared/chain/named-place.ts';
import type { Chain, Place } from '../../shared/contract/chain.ts';
import type { EvidenceRef } from '../../shared/contract/evidence.ts';
import type {
  CompletenessItem,
  MissingItem,
  SideObservation,
  TriageRecord,
} from '../../shared/contract/triage.ts';
import { type Message, message } from '../../shared/message/message.ts';
import { viewsLacking } from './link-views.ts';
import {
  changesOfRound,
  isShownAtAll,
  isWithoutSide,
  occurrencesIn,
  standingEvidence,
  standingSides,
} from './record.ts';
import { sidesHold } from './rules/sides.ts';
import { segmentOf } from './segment.ts';
import { levelsReadUnattended } from './unattended.ts';

const missing = (item: CompletenessItem, text: Message, place: Place | null = null): MissingItem => ({
  item,
  place,
  text,
});

/**
 * What second line would still miss, item by item, given the side that is known. Common practice of the trade, no
 * source.
 *
 * @returns one entry a thing that is missing, with the place where it is a thing of one device or link
 */
export function completeness(record: TriageRecord): MissingItem[] {
  return [
    ...(record.audit === null ? [missing('audit', message('auditNotReviewed'))] : []),
    ...(record.whatChanged === null ? [missing('whatChanged', message('whatChangedNotAsked'))] : []),
    ...missingReproduction(record),
    ...missingSide(record),
    ...missingSubstitution(record),
    ...missingFirmware(record),
    ...missingSettings(record),
    ...missingPhotos(record),
    ...missingEdid(record),
    ...missingLogs(record),
  ];
}

const missingReproduction = (record: TriageRecord): MissingItem[] =>
  isShownAtAll(record) ? [] : [missing('reproduction', message('faultNotSeenBeforeChange'))];

function missingSide(record: TriageRecord): MissingItem[] {
  if (isWithoutSide(record) && standingSides(record).length === 0) {
    return [missing('side', message('workedWithoutSide', { reason: record.withoutSide?.reason ?? '' }))];
  }
  const cause = sidesHold(record);
  return cause === null ? [] : [missing('side', cause.said, cause.place ?? null)];
}

const missingSubstitution = (record: TriageRecord): MissingItem[] =>
  changesOfRound(record).some(
    ({ judgement }) => judgement !== null && judgement.verdict !== 'inconclusive' && judgement.attributable,
  )
    ? []
    : [missing('substitution', message('noRetestThatCounts'))];

/** Ids of the devices on a way of the signal through every device at which a side was concluded. */
function pathDeviceIds(chain: Chain, sides: readonly SideObservation[]): string[] {
  const reach = sides.map(
    ({ deviceId }) => new Set([deviceId, ...upstreamOf(chain, deviceId), ...downstreamOf(chain, deviceId)]),
  );
  return chain.devices.map(({ id }) => id).filter((id) => reach.every((ids) => ids.has(id)));
}

const ofKind = (record: TriageRecord, kind: EvidenceRef['kind']): EvidenceRef[] =>
  standingEvidence(record).filter((item) => item.kind === kind);

function missingFirmware(record: TriageRecord): MissingItem[] {
  const chain = record.asFound?.chain;
  if (chain === undefined) {
    return [missing('firmware', message('noChainAsFound'))];
  }
  const read = new Set([
    ...ofKind(record, 'firmware').map(({ tie }) => tie.deviceId),
    ...levelsReadUnattended(record).map(({ deviceId }) => deviceId),
  ]);
  return pathDeviceIds(chain, standingSides(record)).flatMap((deviceId) => {
    if (read.has(deviceId) || findDevice(chain, deviceId)?.firmware) return [];
    const place: Place = { kind: 'device', deviceId };
    return [missing('firmware', message('firmwareNotKnown', { device: namedPlace(chain, place) }), place)];
  });
}

function missingSettings(record: TriageRecord): MissingItem[] {
  const read = ofKind(record, 'settings');
  const chain = record.asFound?.chain;
  const sides = standingSides(record);
  if (chain === undefined || sides.length === 0) {
    return read.length > 0 ? [] : [missing('settings', message('noSettingsRead'))];
  }
  return sides.flatMap(({ deviceId }) => {
    const recorded = Object.keys(findDevice(chain, deviceId)?.settings ?? {}).length > 0;
    if (recorded || read.some(({ tie }) => tie.deviceId === deviceId)) return [];
    const place: Place = { kind: 'device', deviceId };
    return [missing('settings', message('settingsNotKnown', { device: namedPlace(chain, place) }), place)];
  });
}

/**
 * The links to photograph: the one that the culprit or a change that cleared the fault names, else those in the
 * segment next to the devices at which a side was concluded.
 */
function suspectLinkIds(record: TriageRecord, chain: Chain): string[] {
  const cleared = changesOfRound(record).filter(({ judgement }) => judgement?.verdict === 'cleared');
  const named = [record.culprit?.place, ...cleared.map(({ target }) => target)].flatMap((place) =>
    place?.kind === 'link' ? [place.linkId] : [],
  );
  if (named.length > 0) return [...new Set(named)];
  const possible = new Set(segmentOf(record)?.linkIds ?? []);
  const adjacent = standingSides(record).flatMap(({ deviceId, side }) =>
    side === 'input' ? linksInto(chain, deviceId) : linksOutOf(chain, deviceId),
  );
  return [...new Set(adjacent.map(({ id }) => id))].filter((id) => possible.has(id));
}

const linkViews = {
  sourceEnd: 'viewSourceEnd',
  sinkEnd: 'viewSinkEnd',
  label: 'viewLabel',
} as const;

function missingPhotos(record: TriageRecord): MissingItem[] {
  const chain = record.asFound?.chain;
  const photos = ofKind(record, 'photo');
  const linkIds = chain === undefined ? [] : suspectLinkIds(record, chain);
  if (chain === undefined || linkIds.length === 0) {
    return photos.some(({ tie }) => tie.linkId !== null)
      ? []
      : [missing('linkPhotos', message('noCablePhotos'))];
  }
  return linkIds.flatMap((linkId) => {
    const lacking = viewsLacking(record.evidence, linkId);
    if (lacking.length === 0) return [];
    const place: Place = { kind: 'link', linkId };
    const views = lacking.map((view) => message(linkViews[view]));
    const said = message('photosMissing', { cable: namedPlace(chain, place), views });
    return [missing('linkPhotos', said, place)];
  });
}

/** The EDID matters on the input side: it is what the source was told. */
function missingEdid(record: TriageRecord): MissingItem[] {
  const chain = record.asFound?.chain;
  if (chain === undefined) return [];
  const read = ofKind(record, 'edid');
  return standingSides(record).flatMap(({ deviceId, side }) => {
    if (side === 'output' || read.some(({ tie }) => tie.deviceId === deviceId)) return [];
    const inputs = findDevice(chain, deviceId)?.ports.filter(({ direction }) => direction === 'input') ?? [];
    if (inputs.some(({ edidHex }) => edidHex !== null)) return [];
    const place: Place = { kind: 'device', deviceId };
    return [missing('edid', message('edidNotRead', { device: namedPlace(chain, place) }), place)];
  });
}

function missingLogs(record: TriageRecord): MissingItem[] {
  const moments = occurrencesIn(record.watches).map(({ at }) => Date.parse(at));
  const spans = ofKind(record, 'log').flatMap(({ span }) =>
    span === null ? [] : [{ from: Date.parse(span.from), to: Date.parse(span.to) }],
  );
  const covered = spans.some(({ from, to }) => moments.some((moment) => from <= moment && moment <= to));
  return covered ? [] : [missing('logs', message('noLogOfFault'))];
}
