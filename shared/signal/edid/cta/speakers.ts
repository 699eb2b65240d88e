import { bit, byteAt } from '../bytes.ts';

/** Speakers by the bit of the allocation, lowest first (CTA-861-H section 7.5.3, table 68). */
const speakerNames: readonly string[] = [
  'FL/FR',
  'LFE1',
  'FC',
  'BL/BR',
  'BC',
  'FLc/FRc',
  'RLC/RRC',
  'FLw/FRw',
  'TpFL/TpFR',
  'TpC',
  'TpFC',
  'LS/RS',
  'LFE2',
  'TpBC',
  'SiL/SiR',
  'TpSiL/TpSiR',
  'TpBL/TpBR',
  'BtFC',
  'BtFL/BtFR',
  'TpLS/TpRS',
  'LSd/RSd',
];

/** Names of the speakers an allocation of up to 24 bits stands for. */
export const namesOfSpeakers = (allocation: number): string[] =>
  speakerNames.filter((_, i) => bit(allocation, i));

/** Front left and right alone: stereo. */
export const stereoAllocation = 1;

/**
 * Room configuration (CTA-861-H section 7.5.15). `extents` holds the bytes after the mask: room in decimetres (X, Y, Z),
 * then the display's place in 1/64 of each; absent ones are cut off.
 */
export type RoomConfiguration = {
  displayPlaced: boolean;
  /** Null where the count isn't given. */
  speakerCount: number | null;
  locationsGiven: boolean;
  allocation: number;
  extents: Uint8Array;
};

export function decodeRoom(payload: Uint8Array): RoomConfiguration {
  const flags = byteAt(payload, 0);
  return {
    displayPlaced: bit(flags, 7),
    speakerCount: bit(flags, 6) ? (flags & 31) + 1 : null,
    locationsGiven: bit(flags, 5),
    allocation: byteAt(payload, 1) + byteAt(payload, 2) * 256 + byteAt(payload, 3) * 65_536,
    extents: payload.slice(4),
  };
}

export function encodeRoom(room: RoomConfiguration): number[] {
  const count = room.speakerCount === null ? 0 : 64 + room.speakerCount - 1;
  return [
    (room.displayPlaced ? 128 : 0) + (room.locationsGiven ? 32 : 0) + count,
    room.allocation & 255,
    (room.allocation >> 8) & 255,
    (room.allocation >> 16) & 255,
    ...room.extents,
  ];
}

/** One loudspeaker's place (CTA-861-H section 7.5.16); coordinates are signed 1/64 of the room's extent. */
export type SpeakerLocation = {
  channel: number;
  active: boolean;
  speakerId: number;
  coordinates: { x: number; y: number; z: number } | null;
};

const signed = (value: number): number => (value > 127 ? value - 256 : value);

export function decodeSpeakerLocations(payload: Uint8Array): SpeakerLocation[] {
  const locations: SpeakerLocation[] = [];
  let at = 0;
  while (at + 1 < payload.length) {
    const flags = byteAt(payload, at);
    const placed = bit(flags, 6);
    if (placed && at + 4 >= payload.length) break;
    const coordinate = (i: number) => signed(byteAt(payload, at + 2 + i));
    locations.push({
      channel: flags & 31,
      active: bit(flags, 5),
      speakerId: byteAt(payload, at + 1) & 31,
      coordinates: placed ? { x: coordinate(0), y: coordinate(1), z: coordinate(2) } : null,
    });
    at += placed ? 5 : 2;
  }
  return locations;
}

export const encodeSpeakerLocations = (locations: readonly SpeakerLocation[]): number[] =>
  locations.flatMap(({ channel, active, speakerId, coordinates }) => [
    (coordinates ? 64 : 0) + (active ? 32 : 0) + channel,
    speakerId,
    ...(coordinates ? [coordinates.x & 255, coordinates.y & 255, coordinates.z & 255] : []),
  ]);
