import type { DataBlock } from './data-blocks.ts';
import type { HdmiBlock, HdmiDetails } from './hdmi.ts';
import type { HdmiForumBlock } from './hdmi-forum.ts';
import { ouiLength } from './oui.ts';

/** How many parts stand before the first that a block lacks. */
function present(parts: readonly (object | number | string | null)[]): number {
  const end = parts.indexOf(null);
  return end < 0 ? parts.length : end;
}

const latencyLength = 2;

function hdmiDetailsLength({ latency, interlacedLatency, video }: HdmiDetails): number {
  return (
    1 +
    latencyLength * ((latency ? 1 : 0) + (interlacedLatency ? 1 : 0)) +
    (video ? 2 + video.hdmiVics.length + video.threeD.length : 0)
  );
}

/** As `encodeHdmi`: an address of two bytes, then a byte each. */
function hdmiLength({ physicalAddress, capabilities, maxTmdsClockMHz, details, rest }: HdmiBlock): number {
  const parts = present([physicalAddress, capabilities, maxTmdsClockMHz, details]);
  if (parts === 0) return 0;
  return details && parts === 4 ? 4 + hdmiDetailsLength(details) + rest.length : 1 + parts;
}

/** As `encodeHdmiForum`: a byte each, then three of compression. */
function forumLength(forum: HdmiForumBlock): number {
  const code = forum.maxFrlCode === null ? null : forum.deepColour420;
  const { maxTmdsCharacterRateMHz: rate, flags, features, vrrMinHz, vrrMaxHz, dsc } = forum;
  const parts = 1 + present([rate, flags, code, features, vrrMinHz, vrrMaxHz]);
  return dsc && parts === 7 ? parts + 3 + forum.rest.length : parts;
}

/** Bytes of a payload that is written from its fields. */
function payloadLength(block: Exclude<DataBlock, { kind: 'filler' }>): number {
  switch (block.kind) {
    case 'audio':
      return 3 * block.descriptors.length;
    case 'video':
    case 'ycbcr420Video':
      return block.formats.length;
    case 'videoFormats':
      return 1 + block.video.bytesEach * block.video.descriptors.length;
    case 'hdmi':
      return ouiLength + hdmiLength(block.hdmi);
    case 'hdmiForum':
      return (block.carrier === 'vendorBlock' ? ouiLength : 2) + forumLength(block.forum);
    case 'vendor':
      return ouiLength + block.payload.length;
    case 'speakers':
      return 3;
    case 'colorimetry':
      return 2;
    case 'videoCapability':
    case 'extensionOverride':
      return 1;
    case 'hdrStatic':
      return (
        2 + present([block.hdr.maxLuminanceCode, block.hdr.maxFrameAverageCode, block.hdr.minLuminanceCode])
      );
    case 'hdrDynamic':
      return block.types.reduce((sum, { support }) => sum + 3 + support.length, 0);
    case 'formatPreference':
      return block.references.length;
    case 'ycbcr420Map':
      return block.map.length;
    case 'room':
      return 4 + block.room.extents.length;
    case 'speakerLocations':
      return block.locations.reduce((sum, { coordinates }) => sum + (coordinates ? 5 : 2), 0);
    case 'unknown':
      return block.payload.length;
  }
}

/** Whether a second byte follows the header. */
function hasExtendedTag(block: DataBlock): boolean {
  switch (block.kind) {
    case 'audio':
    case 'video':
    case 'videoFormats':
    case 'speakers':
    case 'hdmi':
      return false;
    case 'hdmiForum':
      return block.carrier !== 'vendorBlock';
    case 'vendor':
      return block.scope !== 'general';
    case 'unknown':
      return block.extendedTag !== null;
    default:
      return true;
  }
}

/** Longest block: its length has five bits, its header a byte. */
const longest = 32;

/**
 * Bytes of a whole block with its header, as `encodeDataBlock` writes it; a test holds the two together. A phone judges
 * by this what a limited EDID has room for, and need not load the encoders.
 */
export function dataBlockLength(block: DataBlock): number {
  if (block.kind === 'filler') return block.length;
  const payload = block.exactBytes?.length ?? payloadLength(block);
  return Math.min(payload + (hasExtendedTag(block) ? 2 : 1), longest);
}
