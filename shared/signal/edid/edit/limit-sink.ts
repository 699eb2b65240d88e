import { highestPlainRateMHz, unstatedRateMHz } from '../capabilities.ts';
import type { AudioDescriptor } from '../cta/audio.ts';
import type { DataBlock } from '../cta/data-blocks.ts';
import type { HdmiBlock } from '../cta/hdmi.ts';
import type { ForumDsc, HdmiForumBlock } from '../cta/hdmi-forum.ts';
import { stereoAllocation } from '../cta/speakers.ts';
import { edited } from '../exact.ts';
import type { ResolvedLimits } from './edid-limits.ts';

/** Both HDMI blocks state rates in steps of 5 MHz. */
const rateStepMHz = 5;
const floorTo = (value: number, step: number): number => Math.floor(value / step) * step;

/** A sink that states no rate does `unstatedRateMHz`, so a lower limit has to be stated. */
function limitHdmi(hdmi: HdmiBlock, rateMHz: number): HdmiBlock {
  const own = hdmi.maxTmdsClockMHz || unstatedRateMHz;
  if (own <= rateMHz) return hdmi;
  return {
    ...hdmi,
    capabilities: hdmi.capabilities ?? {
      supportsAi: false,
      dc48: false,
      dc36: false,
      dc30: false,
      dcY444: false,
      dviDual: false,
    },
    maxTmdsClockMHz: floorTo(rateMHz, rateStepMHz),
  };
}

const noCompression: ForumDsc = {
  dsc12a: false,
  native420: false,
  qmsTfrMax: false,
  qmsTfrMin: false,
  allBpp: false,
  bpc16: false,
  bpc12: false,
  bpc10: false,
  maxFrlCode: 0,
  maxSlicesCode: 0,
  chunkCode: 0,
};
/** What goes with the range: film rates in it, and its timing (HDMI 2.1 section 10.3.2, PB5). */
const noVariableRate = { mDelta: false, cinemaVrr: false, negativeMvrr: false };
const noDeepColour420 = { dc48: false, dc36: false, dc30: false };

/** The block states what lies above 340 MHz only, so a lower limit is 0 (HDMI 2.0 section 10.3.2). */
function limitForumRate(forum: HdmiForumBlock, rateMHz: number): HdmiForumBlock {
  const own = forum.maxTmdsCharacterRateMHz ?? 0;
  const limited = rateMHz > highestPlainRateMHz ? Math.min(own, floorTo(rateMHz, rateStepMHz)) : 0;
  const noScrambling = limited === 0 && (forum.maxFrlCode ?? 0) === 0;
  const flags = forum.flags && {
    ...forum.flags,
    ...(noScrambling
      ? { scdcPresent: false, readRequest: false, cableStatus: false, scramblingBelow340: false }
      : {}),
  };
  return {
    ...forum,
    maxTmdsCharacterRateMHz: forum.maxTmdsCharacterRateMHz === null ? null : limited,
    flags,
  };
}

function limitForum(forum: HdmiForumBlock, limits: ResolvedLimits): HdmiForumBlock {
  let limited = forum;
  if (limits.dropFrl)
    limited = {
      ...limited,
      maxFrlCode: limited.maxFrlCode === null ? null : 0,
      dsc: null,
      rest: new Uint8Array(),
    };
  if (!limits.dropFrl && (limited.maxFrlCode ?? 0) > limits.mostFrlCode)
    limited = {
      ...limited,
      maxFrlCode: limits.mostFrlCode,
      dsc: limited.dsc && {
        ...limited.dsc,
        maxFrlCode: Math.min(limited.dsc.maxFrlCode, limits.mostFrlCode),
      },
    };
  if (limits.dropCompression) limited = { ...limited, dsc: limited.dsc && noCompression };
  if (limits.dropVrr && limited.vrrMinHz !== null)
    limited = {
      ...limited,
      vrrMinHz: 0,
      vrrMaxHz: limited.vrrMaxHz === null ? null : 0,
      features: limited.features && { ...limited.features, ...noVariableRate },
    };
  if (limits.drop420) {
    limited = {
      ...limited,
      deepColour420: limited.deepColour420 && { ...limited.deepColour420, ...noDeepColour420 },
      dsc: limited.dsc && { ...limited.dsc, native420: false },
    };
  }
  return limits.rateMHz === null ? limited : limitForumRate(limited, limits.rateMHz);
}

const lpcm = 1;

function stereo(descriptors: readonly AudioDescriptor[]): AudioDescriptor[] {
  const kept = descriptors
    .filter((descriptor) => descriptor.formatCode === lpcm)
    .map((descriptor) => ({ ...descriptor, channels: Math.min(descriptor.channels ?? 1, 2), spare: 0 }));
  const keys = kept.map((descriptor) => JSON.stringify(descriptor));
  return kept.filter((_, i) => keys.indexOf(keys[i] ?? '') === i);
}

/** Extended tag of the HDMI audio block: multi-stream and 3D audio (HDMI 2.0 section 10.3.3). */
const hdmiAudioTag = 18;

function limitAudio(block: DataBlock): DataBlock[] {
  switch (block.kind) {
    case 'audio': {
      const descriptors = stereo(block.descriptors);
      return descriptors.length > 0 ? [edited(block, { descriptors })] : [];
    }
    case 'speakers':
      return [edited(block, { allocation: block.allocation & stereoAllocation })];
    case 'room':
    case 'speakerLocations':
      return [];
    case 'vendor':
      return block.scope === 'audio' ? [] : [block];
    case 'unknown':
      return block.extendedTag === hdmiAudioTag ? [] : [block];
    default:
      return [block];
  }
}

/** ICtCp is an encoding of HDR alone (CTA-861-H section 7.5.5). */
const ictcpBit = 1 << 14;

function limitHdr(block: DataBlock): DataBlock[] {
  switch (block.kind) {
    case 'hdrStatic':
    case 'hdrDynamic':
      return [];
    case 'vendor':
      return block.scope === 'video' ? [] : [block];
    case 'colorimetry':
      return block.bits & ictcpBit ? [edited(block, { bits: block.bits & ~ictcpBit })] : [block];
    default:
      return [block];
  }
}

function limitRates(block: DataBlock, limits: ResolvedLimits): DataBlock {
  if (block.kind === 'hdmi' && limits.rateMHz !== null) {
    const hdmi = limitHdmi(block.hdmi, limits.rateMHz);
    return hdmi === block.hdmi ? block : edited(block, { hdmi });
  }
  if (block.kind === 'hdmiForum') {
    const forum = limitForum(block.forum, limits);
    return forum === block.forum ? block : edited(block, { forum });
  }
  return block;
}

/** Limits rates, HDR and audio in one list of data blocks. */
export function limitSink(blocks: readonly DataBlock[], limits: ResolvedLimits): DataBlock[] {
  return blocks
    .map((block) => limitRates(block, limits))
    .flatMap((block) => (limits.dropHdr ? limitHdr(block) : [block]))
    .flatMap((block) => (limits.stereoOnly ? limitAudio(block) : [block]));
}
