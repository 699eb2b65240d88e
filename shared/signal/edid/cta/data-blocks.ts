import { message } from '../../../message/index.ts';
import { byteAt } from '../bytes.ts';
import { type Exact, readFrom } from '../exact.ts';
import { type Report, shifted } from '../problems.ts';
import { type AudioDescriptor, decodeAudio, encodeAudio } from './audio.ts';
import {
  decodeHdrDynamic,
  decodeHdrStatic,
  decodeVideoCapability,
  encodeHdrDynamic,
  encodeHdrStatic,
  encodeVideoCapability,
  type HdrDynamicType,
  type HdrStatic,
  type VideoCapability,
} from './colour.ts';
import { decodeHdmi, encodeHdmi, type HdmiBlock } from './hdmi.ts';
import { decodeHdmiForum, encodeHdmiForum, type HdmiForumBlock } from './hdmi-forum.ts';
import { decodeOui, encodeOui, hdmiForumOui, hdmiOui, ouiLength } from './oui.ts';
import {
  decodeRoom,
  decodeSpeakerLocations,
  encodeRoom,
  encodeSpeakerLocations,
  type RoomConfiguration,
  type SpeakerLocation,
} from './speakers.ts';
import { decodeShortVideos, encodeShortVideos, type ShortVideoDescriptor } from './video.ts';
import { decodeVideoFormats, encodeVideoFormats, type VideoFormats } from './video-formats.ts';

/** A data block of the CTA-861 extension (CTA-861-H section 7.5). `exactBytes` is its payload, tags left out. */
export type DataBlock = Exact &
  (
    | { kind: 'audio'; descriptors: readonly AudioDescriptor[] }
    | { kind: 'video'; formats: readonly ShortVideoDescriptor[] }
    | { kind: 'videoFormats'; video: VideoFormats }
    /** Speaker allocation, 24 bits, see `namesOfSpeakers`. */
    | { kind: 'speakers'; allocation: number }
    | { kind: 'hdmi'; hdmi: HdmiBlock }
    | { kind: 'hdmiForum'; carrier: 'vendorBlock' | 'sinkCapabilityBlock'; forum: HdmiForumBlock }
    /** Any other vendor's block, of its own tag, for video (among them dynamic-HDR systems) or for audio. */
    | { kind: 'vendor'; scope: 'general' | 'video' | 'audio'; oui: string; payload: Uint8Array }
    | { kind: 'videoCapability'; capability: VideoCapability }
    | { kind: 'colorimetry'; bits: number }
    | { kind: 'hdrStatic'; hdr: HdrStatic }
    | { kind: 'hdrDynamic'; types: readonly HdrDynamicType[] }
    /** Short video references, most preferred first (CTA-861-H section 7.5.12). */
    | { kind: 'formatPreference'; references: readonly number[] }
    /** Formats taken as YCbCr 4:2:0 only (CTA-861-H section 7.5.10). */
    | { kind: 'ycbcr420Video'; formats: readonly ShortVideoDescriptor[] }
    /** Formats taken as YCbCr 4:2:0 too (CTA-861-H section 7.5.11), see `mapNames`. */
    | { kind: 'ycbcr420Map'; map: Uint8Array }
    | { kind: 'room'; room: RoomConfiguration }
    | { kind: 'speakerLocations'; locations: readonly SpeakerLocation[] }
    /** Number of extension blocks, in place of byte 126 of the base block (HDMI 2.1 section 10.3.6). */
    | { kind: 'extensionOverride'; extensionCount: number }
    /** Zeros between or after the blocks. */
    | { kind: 'filler'; length: number }
    /** Everything else, byte for byte; `extendedTag` is null unless `tag` is 7. */
    | { kind: 'unknown'; tag: number; extendedTag: number | null; payload: Uint8Array }
  );

const tags = { audio: 1, video: 2, vendor: 3, speakers: 4, videoFormats: 6, extended: 7 } as const;
const extendedTags = {
  videoCapability: 0,
  vendorVideo: 1,
  colorimetry: 5,
  hdrStatic: 6,
  hdrDynamic: 7,
  formatPreference: 13,
  ycbcr420Video: 14,
  ycbcr420Map: 15,
  vendorAudio: 17,
  room: 19,
  speakerLocations: 20,
  extensionOverride: 0x78,
  sinkCapability: 0x79,
} as const;

function decodeVendor(
  payload: Uint8Array,
  scope: 'general' | 'video' | 'audio',
  report: Report,
): DataBlock | null {
  if (payload.length < ouiLength) {
    report('error', 0, message('edid/vendorBlockTooShort'));
    return null;
  }
  const oui = decodeOui(payload);
  const content = payload.slice(ouiLength);
  const inside = shifted(report, ouiLength);
  if (scope === 'general' && oui === hdmiOui) return { kind: 'hdmi', hdmi: decodeHdmi(content, inside) };
  if (scope === 'general' && oui === hdmiForumOui)
    return { kind: 'hdmiForum', carrier: 'vendorBlock', forum: decodeHdmiForum(content, inside) };
  return { kind: 'vendor', scope, oui, payload: content };
}

/** The fixed length of a block, and what is said of a shorter one. */
type Shortest = {
  least: number;
  code:
    | 'edid/videoCapabilityTooShort'
    | 'edid/colorimetryTooShort'
    | 'edid/roomConfigurationTooShort'
    | 'edid/extensionOverrideTooShort'
    | 'edid/forumCapabilityTooShort'
    | 'edid/speakerAllocationTooShort';
};

/** Fills in for a payload that is shorter than its block's fixed length; the block is then kept as unknown. */
function longEnough(payload: Uint8Array, { least, code }: Shortest, report: Report): boolean {
  if (payload.length >= least) return true;
  report('error', 0, message(code, { bytes: payload.length, least }));
  return false;
}

function decodeExtended(extendedTag: number, payload: Uint8Array, report: Report): DataBlock | null {
  switch (extendedTag) {
    case extendedTags.videoCapability:
      if (!longEnough(payload, { least: 1, code: 'edid/videoCapabilityTooShort' }, report)) return null;
      return { kind: 'videoCapability', capability: decodeVideoCapability(payload) };
    case extendedTags.vendorVideo:
      return decodeVendor(payload, 'video', report);
    case extendedTags.vendorAudio:
      return decodeVendor(payload, 'audio', report);
    case extendedTags.colorimetry:
      if (!longEnough(payload, { least: 2, code: 'edid/colorimetryTooShort' }, report)) return null;
      return { kind: 'colorimetry', bits: byteAt(payload, 0) + byteAt(payload, 1) * 256 };
    case extendedTags.hdrStatic:
      return { kind: 'hdrStatic', hdr: decodeHdrStatic(payload, report) };
    case extendedTags.hdrDynamic:
      return { kind: 'hdrDynamic', types: decodeHdrDynamic(payload, report) };
    case extendedTags.formatPreference:
      return { kind: 'formatPreference', references: [...payload] };
    case extendedTags.ycbcr420Video:
      return { kind: 'ycbcr420Video', formats: decodeShortVideos(payload) };
    case extendedTags.ycbcr420Map:
      return { kind: 'ycbcr420Map', map: payload.slice() };
    case extendedTags.room:
      if (!longEnough(payload, { least: 4, code: 'edid/roomConfigurationTooShort' }, report)) return null;
      return { kind: 'room', room: decodeRoom(payload) };
    case extendedTags.speakerLocations:
      return { kind: 'speakerLocations', locations: decodeSpeakerLocations(payload) };
    case extendedTags.extensionOverride:
      if (!longEnough(payload, { least: 1, code: 'edid/extensionOverrideTooShort' }, report)) return null;
      return { kind: 'extensionOverride', extensionCount: byteAt(payload, 0) };
    case extendedTags.sinkCapability:
      if (!longEnough(payload, { least: 3, code: 'edid/forumCapabilityTooShort' }, report)) return null;
      return {
        kind: 'hdmiForum',
        carrier: 'sinkCapabilityBlock',
        forum: decodeHdmiForum(payload.subarray(2), shifted(report, 2)),
      };
    default:
      return null;
  }
}

function decodeByTag(tag: number, payload: Uint8Array, report: Report): DataBlock | null {
  switch (tag) {
    case tags.audio:
      return { kind: 'audio', descriptors: decodeAudio(payload, report) };
    case tags.video:
      return { kind: 'video', formats: decodeShortVideos(payload) };
    case tags.videoFormats:
      return payload.length > 0 ? { kind: 'videoFormats', video: decodeVideoFormats(payload) } : null;
    case tags.vendor:
      return decodeVendor(payload, 'general', report);
    case tags.speakers:
      if (!longEnough(payload, { least: 3, code: 'edid/speakerAllocationTooShort' }, report)) return null;
      return {
        kind: 'speakers',
        allocation: byteAt(payload, 0) + byteAt(payload, 1) * 256 + byteAt(payload, 2) * 65_536,
      };
    default:
      return null;
  }
}

/** Reads one block from its tag and payload (the bytes after the tag and, for tag 7, after the extended tag). */
export function decodeDataBlock(
  tag: number,
  extendedTag: number | null,
  payload: Uint8Array,
  report: Report,
): DataBlock {
  const block =
    extendedTag === null ? decodeByTag(tag, payload, report) : decodeExtended(extendedTag, payload, report);
  if (!block) return { kind: 'unknown', tag, extendedTag, payload: payload.slice() };
  return readFrom(block, payload);
}

/** Tag, extended tag or null. */
export function tagsOf(block: DataBlock): readonly [number, number | null] {
  switch (block.kind) {
    case 'filler':
      return [0, null];
    case 'audio':
    case 'video':
    case 'speakers':
    case 'videoFormats':
      return [tags[block.kind], null];
    case 'hdmi':
      return [tags.vendor, null];
    case 'hdmiForum':
      return block.carrier === 'vendorBlock'
        ? [tags.vendor, null]
        : [tags.extended, extendedTags.sinkCapability];
    case 'vendor':
      if (block.scope === 'general') return [tags.vendor, null];
      return [tags.extended, block.scope === 'video' ? extendedTags.vendorVideo : extendedTags.vendorAudio];
    case 'unknown':
      return [block.tag, block.extendedTag];
    default:
      return [tags.extended, extendedTags[block.kind]];
  }
}

const littleEndian24 = (value: number): number[] => [value & 255, (value >> 8) & 255, (value >> 16) & 255];

function payloadOf(block: DataBlock): Uint8Array {
  const fields = fieldsOf(block);
  return fields instanceof Uint8Array ? fields : new Uint8Array(fields);
}

function fieldsOf(block: DataBlock): Uint8Array | readonly number[] {
  switch (block.kind) {
    case 'audio':
      return encodeAudio(block.descriptors);
    case 'video':
    case 'ycbcr420Video':
      return encodeShortVideos(block.formats);
    case 'videoFormats':
      return encodeVideoFormats(block.video);
    case 'speakers':
      return littleEndian24(block.allocation);
    case 'hdmi':
      return [...encodeOui(hdmiOui), ...encodeHdmi(block.hdmi)];
    case 'hdmiForum':
      return block.carrier === 'vendorBlock'
        ? [...encodeOui(hdmiForumOui), ...encodeHdmiForum(block.forum)]
        : [0, 0, ...encodeHdmiForum(block.forum)];
    case 'vendor':
      return [...encodeOui(block.oui), ...block.payload];
    case 'videoCapability':
      return [encodeVideoCapability(block.capability)];
    case 'colorimetry':
      return [block.bits & 255, block.bits >> 8];
    case 'hdrStatic':
      return encodeHdrStatic(block.hdr);
    case 'hdrDynamic':
      return encodeHdrDynamic(block.types);
    case 'formatPreference':
      return block.references;
    case 'ycbcr420Map':
      return block.map;
    case 'room':
      return encodeRoom(block.room);
    case 'speakerLocations':
      return encodeSpeakerLocations(block.locations);
    case 'extensionOverride':
      return [block.extensionCount];
    case 'unknown':
      return block.payload;
    case 'filler':
      return [];
  }
}

/** Longest content of a block: its length has five bits. */
const mostContent = 31;

/**
 * Writes a whole block with its header byte at `at` and returns where the next one goes. Content longer than its length
 * field allows, and what lies past the end of `into`, is cut off.
 */
export function writeDataBlock(block: DataBlock, into: Uint8Array, at: number): number {
  if (block.kind === 'filler') {
    into.fill(0, at, at + block.length);
    return at + block.length;
  }
  const [tag, extendedTag] = tagsOf(block);
  const payload = block.exactBytes ?? payloadOf(block);
  const start = extendedTag === null ? at + 1 : at + 2;
  const end = Math.min(start + payload.length, at + 1 + mostContent);
  if (at < into.length) into[at] = tag * 32 + (end - at - 1);
  if (extendedTag !== null && at + 1 < into.length) into[at + 1] = extendedTag;
  const room = Math.min(end, into.length) - start;
  if (room > 0) into.set(room < payload.length ? payload.subarray(0, room) : payload, start);
  return end;
}

/** A whole block with its header byte. */
export function encodeDataBlock(block: DataBlock): Uint8Array {
  const bytes = new Uint8Array(block.kind === 'filler' ? block.length : 1 + mostContent);
  return bytes.subarray(0, writeDataBlock(block, bytes, 0));
}
