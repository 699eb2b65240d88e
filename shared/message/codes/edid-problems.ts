import type { CodeTable } from '../values.ts';

const lengths = { bytes: 'count', least: 'count' } as const;
/** Where in its block something begins. */
const at = { byte: 'count' } as const;

/** What is wrong with an EDID, and how it was found in a file. */
export const edidProblemCodes = {
  'edid/noBytes': {},
  /** Every byte is the same: 00 or FF. */
  'edid/emptyMemory': { byte: 'term' },
  'edid/tooFewBytes': { bytes: 'count' },
  'edid/onlyFirstBlocksRead': { blocks: 'count' },
  'edid/blockCutOff': { bytes: 'count', of: 'count' },
  'edid/checksumWrong': { written: 'term', right: 'term' },
  'edid/extensionUnread': { tag: 'term' },
  'edid/overrideWantsOne': { declared: 'count' },
  'edid/extensionsMiscounted': { declared: 'count', present: 'count' },
  'edid/extensionsMiscountedByOverride': { declared: 'count', present: 'count' },
  'edid/headerDamaged': {},
  'edid/versionUnknown': { version: 'term' },
  'edid/versionNewer': { version: 'term' },
  'edid/timingTooSlow': {},
  'edid/syncOverrunsBlanking': {},
  'edid/repeatedWhole': { copies: 'count' },

  'edid/ctaRevisionZero': {},
  'edid/timingsInsideHead': at,
  'edid/timingsOutsideBlock': at,
  'edid/blockHoldsNothing': {},
  'edid/dataBlockOverruns': { bytes: 'count' },
  'edid/dataBlockReserved': {},
  'edid/extendedTagMissing': {},
  'edid/vendorBlockTooShort': {},
  'edid/videoCapabilityTooShort': lengths,
  'edid/colorimetryTooShort': lengths,
  'edid/roomConfigurationTooShort': lengths,
  'edid/extensionOverrideTooShort': lengths,
  'edid/forumCapabilityTooShort': lengths,
  'edid/speakerAllocationTooShort': lengths,
  'edid/hdrStaticTooShort': {},
  'edid/hdrDynamicOverruns': {},
  'edid/hdmiFormatsOverrun': {},
  'edid/hdmiBlockTooShort': {},
  'edid/audioNotWhole': { bytes: 'count' },
  'edid/frlRateUnknown': { code: 'term' },
  'edid/forumBlockTooShort': {},

  'edid/displayIdTimingNotWhole': { bytes: 'count', type: 'term' },
  'edid/displayIdBlockOverruns': {},
  'edid/displayIdSectionTooLong': {},
  'edid/displayIdChecksumWrong': {},

  'edid/bytesBeforeHeader': { bytes: 'count' },
  'edid/lowByteFirst': {},
  'edid/moreBytesFollow': {},
  'edid/fileUnreadable': { reason: 'text' },
} as const satisfies CodeTable;
