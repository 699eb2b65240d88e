import { findDevice, findLink } from '../../../../shared/chain/look-up.ts';
import { placeKey } from '../../../../shared/chain/place.ts';
import type { Chain, Link, Place } from '../../../../shared/contract/chain.ts';
import type { InstalledPart } from '../../../../shared/contract/installed.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import { lengthFrom } from '../common/length.ts';
import { placeOf } from '../common/triage-addresses.ts';

/** A part that was put in, as it stands in the form. */
export type PartDraft = {
  construction: Link['construction'];
  category: Link['category'];
  certified: boolean;
  lengthM: string;
  fittedRight: boolean;
  installedOn: string;
  model: string;
  serial: string;
  firmware: string;
};
/** By the key of the place that each went into. */
export type InstalledDraft = { parts: Record<string, PartDraft> };

/** Before anything is said of a part: as the one that it replaces was, where that is likely, and of today. */
export function partAt(chain: Chain, place: Place, today: string): PartDraft {
  const link = place.kind === 'link' ? findLink(chain, place.linkId) : undefined;
  const device = place.kind === 'device' ? findDevice(chain, place.deviceId) : undefined;
  return {
    construction: link?.construction ?? 'passiveCopper',
    category: 'unknown',
    certified: false,
    lengthM: String(link?.lengthM ?? ''),
    fittedRight: false,
    installedOn: today,
    model: device?.model ?? '',
    serial: '',
    firmware: '',
  };
}

/** The parts as the command holds them; null where something of one is no such value. */
export function installedFrom({ parts }: InstalledDraft): InstalledPart[] | null {
  const all = Object.entries(parts).map(([key, part]) => partFrom(placeOf(key), part));
  const known = all.filter((part) => part !== null);
  return known.length === all.length ? known : null;
}

function partFrom(place: Place | null, draft: PartDraft): InstalledPart | null {
  const { construction, category, certified, fittedRight, installedOn } = draft;
  if (place?.kind === 'link') {
    const lengthM = lengthFrom(draft.lengthM);
    if (lengthM === null || installedOn === '') return null;
    return {
      kind: 'cable',
      linkId: place.linkId,
      construction,
      category,
      certified: certified && category !== 'unknown',
      lengthM,
      installedOn,
      fittedRight,
    };
  }
  if (place?.kind !== 'device') return null;
  const said = (text: string): string | null => text.trim() || null;
  const [model, serial, firmware] = [draft.model, draft.serial, draft.firmware].map(said);
  return {
    kind: 'device',
    deviceId: place.deviceId,
    model: model ?? null,
    serial: serial ?? null,
    firmware: firmware ?? null,
  };
}

/** The part that the remedy is about: the culprit, or what is replaced on suspicion; null where that is none. */
export function likelyReplaced({ culprit, remedy }: TriageRecord): Place | null {
  const place = remedy?.kind === 'onSuspicion' ? remedy.place : (culprit?.place ?? null);
  if (place?.kind === 'port') return { kind: 'device', deviceId: place.deviceId };
  return place === null || place.kind === 'chain' ? null : place;
}

/** Every cable and device of a chain, by its key. */
export const replaceable = (chain: Chain): [string, Place][] =>
  [
    ...chain.links.map(({ id }): Place => ({ kind: 'link', linkId: id })),
    ...chain.devices.map(({ id }): Place => ({ kind: 'device', deviceId: id })),
  ].map((place) => [placeKey(place), place]);
