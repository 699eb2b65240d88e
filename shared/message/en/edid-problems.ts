import type { edidProblemCodes } from '../codes/edid-problems.ts';
import type { Sentences } from '../sentences.ts';

type Lengths = { bytes: number; least: number };
const tooShort =
  (what: string) =>
  ({ bytes, least }: Lengths): string =>
    `A ${what} block of ${bytes} bytes; ${least} belong there.`;

export const edidProblemsEn: Sentences<typeof edidProblemCodes> = {
  'edid/noBytes': () => 'There are no bytes to read.',
  'edid/emptyMemory': ({ byte }) =>
    `Every byte is ${byte}h: memory that was never written, or a bus nobody answers on.`,
  'edid/tooFewBytes': ({ bytes }, say) =>
    `${bytes} ${say.plural(bytes, 'byte is', 'bytes are')} too few for an EDID.`,
  'edid/onlyFirstBlocksRead': ({ blocks }) => `Only the first ${blocks} blocks are read.`,
  'edid/blockCutOff': ({ bytes, of }) => `The block is cut off after ${bytes} of ${of} bytes.`,
  'edid/checksumWrong': ({ written, right }) => `The checksum is ${written}h and should be ${right}h.`,
  'edid/extensionUnread': ({ tag }) => `An extension block of type ${tag}h, kept unread.`,
  'edid/overrideWantsOne': ({ declared }, say) =>
    `${declared} extension ${say.plural(declared, 'block is', 'blocks are')} declared where the override block wants 1.`,
  'edid/extensionsMiscounted': ({ declared, present }) =>
    `Extension blocks: ${declared} declared in byte 126, ${present} there.`,
  'edid/extensionsMiscountedByOverride': ({ declared, present }) =>
    `Extension blocks: ${declared} declared in the override block, ${present} there.`,
  'edid/headerDamaged': () => 'The header 00 FF FF FF FF FF FF 00 is damaged.',
  'edid/versionUnknown': ({ version }) =>
    `EDID version ${version} is not 1.x; read as 1.4 as far as it goes.`,
  'edid/versionNewer': ({ version }) => `EDID ${version} is newer than 1.4; read as 1.4.`,
  'edid/timingTooSlow': () => 'A detailed timing below 10 MHz pixel clock: taken for filler.',
  'edid/syncOverrunsBlanking': () =>
    'Front porch and sync of a detailed timing take more than its blanking has; its rate is that of the blanking.',
  'edid/repeatedWhole': ({ copies }) =>
    `The whole EDID is there ${copies} times over, as in a dump of a larger memory; read once.`,

  'edid/ctaRevisionZero': () => 'CTA-861 revision 0 does not exist; the block is not read.',
  'edid/timingsInsideHead': ({ byte }) =>
    `Timings would begin at byte ${byte}, inside the head of the block.`,
  'edid/timingsOutsideBlock': ({ byte }) => `Timings would begin at byte ${byte}, outside the block.`,
  'edid/blockHoldsNothing': () =>
    'The block says that it holds neither data blocks nor timings; its flags are not read.',
  'edid/dataBlockOverruns': ({ bytes }) =>
    `A data block of ${bytes} bytes runs over the end of its collection.`,
  'edid/dataBlockReserved': () => 'A data block with the reserved tag 0.',
  'edid/extendedTagMissing': () => 'A data block with an extended tag, but no room for it.',
  'edid/vendorBlockTooShort': () => 'A vendor block too short for its OUI.',
  'edid/videoCapabilityTooShort': tooShort('video capability'),
  'edid/colorimetryTooShort': tooShort('colorimetry'),
  'edid/roomConfigurationTooShort': tooShort('room configuration'),
  'edid/extensionOverrideTooShort': tooShort('extension override'),
  'edid/forumCapabilityTooShort': tooShort('HDMI Forum sink capability'),
  'edid/speakerAllocationTooShort': tooShort('speaker allocation'),
  'edid/hdrStaticTooShort': () => 'An HDR static metadata block too short for its transfer functions.',
  'edid/hdrDynamicOverruns': () => 'An HDR dynamic metadata type runs over the end of its block.',
  'edid/hdmiFormatsOverrun': () => 'HDMI formats or 3D structures run over the end of their block.',
  'edid/hdmiBlockTooShort': () => 'An HDMI block too short to hold its physical address.',
  'edid/audioNotWhole': ({ bytes }) =>
    `An audio block of ${bytes} bytes doesn't hold whole descriptors of three.`,
  'edid/frlRateUnknown': ({ code }) =>
    `Code ${code} of the highest fixed rate stands for one of a later standard: counted as 48 Gbit/s, which it is at least.`,
  'edid/forumBlockTooShort': () => 'An HDMI Forum block too short for its version, rate and flags.',

  'edid/displayIdTimingNotWhole': ({ bytes, type }) =>
    `${bytes} bytes at the end of a type ${type} timing block are no whole timing.`,
  'edid/displayIdBlockOverruns': () => 'A DisplayID block runs over the end of its section.',
  'edid/displayIdSectionTooLong': () => 'The DisplayID section claims more bytes than its block holds.',
  'edid/displayIdChecksumWrong': () => 'The checksum of the DisplayID section is wrong.',

  'edid/bytesBeforeHeader': ({ bytes }, say) =>
    `${bytes} ${say.plural(bytes, 'byte before the header is', 'bytes before the header are')} skipped.`,
  'edid/lowByteFirst': () => 'The dump has the low byte of each word first.',
  'edid/moreBytesFollow': () => 'More bytes follow in the text; only the first EDID is read.',
  'edid/fileUnreadable': ({ reason }, say) => `The file can't be read: ${say.text(reason)}.`,
};
