import { categoryNames, constructionNames } from '../../../../shared/chain/link-words.ts';
import type { Link } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { CompletenessItem, Symptom, Watch, WhatChanged } from '../../../../shared/contract/triage.ts';

/** `2026-11-25 09:12`, UTC. */
export const moment = (instant: string): string => `${instant.slice(0, 10)} ${instant.slice(11, 16)}`;

export const nameOf = (file: Pick<CaseFile, 'people'>, memberId: string): string =>
  file.people.find((person) => person.id === memberId)?.name ?? memberId;

export const symptomWords: Record<Symptom['kind'], string> = {
  noPicture: 'No picture',
  dropOuts: 'The picture drops out',
  sparkles: 'Sparkles in the picture',
  noHdrOrWrongColour: 'No HDR, or wrong colours',
  wrongRateOrResolution: 'Wrong frame rate or resolution',
  contentProtectionMessage: 'A content-protection message',
  soundOnly: 'Sound, but no picture',
};

export const whatChangedWords: Record<WhatChanged['kind'], string> = {
  cable: 'a cable',
  device: 'a device',
  firmware: 'firmware',
  setting: 'a setting',
  move: 'something was moved',
  buildingWork: 'building work',
  other: 'something else',
  nothing: 'nothing, as far as is known',
  notKnown: 'not known',
};

export const hazardWords: Record<CaseFile['site']['hazards'][number]['kind'], string> = {
  ladder: 'Work at height',
  laser: 'Laser light',
  mains: 'Mains voltage',
  cableAcrossFloor: 'Cables across the floor',
  cableInWall: 'Cables in walls',
  other: 'Other',
};

export const itemWords: Record<CompletenessItem, string> = {
  audit: 'Prerequisites',
  whatChanged: 'What changed',
  reproduction: 'Reproduction',
  side: 'Side',
  substitution: 'A substitution with a valid retest',
  firmware: 'Firmware levels',
  settings: 'Settings',
  linkPhotos: 'Photos of the suspect cable',
  edid: 'EDID',
  logs: 'Logs',
};

export const purposeWords: Record<Watch['purpose'], string> = {
  reproduce: 'Reproducing the fault',
  side: 'Finding the side',
  retest: 'Retest',
  confirm: 'Confirming the culprit',
  verify: 'Verifying the remedy',
};

const directionWords: Record<Link['direction'], string> = {
  notDirectional: 'not directional',
  asMarked: 'the right way round',
  reversed: 'the wrong way round',
  unknown: 'direction not known',
};
const routeWords: Record<Link['route'], string> = {
  free: 'lying free',
  inWall: 'in the wall',
  inConduit: 'in conduit',
};

/** All that is known of a cable, in a line. */
export const linkWords = (link: Link): string =>
  [
    constructionNames[link.construction],
    `${categoryNames[link.category]}${link.certified ? ', certified' : ', certification not seen'}`,
    directionWords[link.direction],
    routeWords[link.route],
    endWords('source end', link.sourceEnd),
    endWords('display end', link.sinkEnd),
    link.installedOn === null ? '' : `installed ${link.installedOn}`,
    link.notes,
  ]
    .filter((part) => part !== '')
    .join('; ');

function endWords(name: string, end: Link['sourceEnd']): string {
  const parts = [
    end.seated === 'no' ? 'not fully seated' : end.seated === 'unknown' ? 'seating not checked' : '',
    end.needsPower && end.powered !== 'yes'
      ? end.powered === 'no'
        ? 'not powered'
        : 'power not checked'
      : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `${name} ${parts.join(', ')}`;
}

/** A length of time a person watched: `42 min`, `1 h 40 min`. */
export function durationWords(fromInstant: string, toInstant: string): string {
  const minutes = (Date.parse(toInstant) - Date.parse(fromInstant)) / 60_000;
  if (minutes < 1) return 'under a minute';
  const whole = Math.round(minutes);
  return whole < 100 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}
