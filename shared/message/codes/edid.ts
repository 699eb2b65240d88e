import type { CodeTable } from '../values.ts';

const bothWays = { topic: 'edidTopic', lost: 'message[]', gained: 'message[]' } as const;
const fixedRate = { rate: 'gbps', lanes: 'count', lane: 'gbps' } as const;

/** What an EDID says of a topic, an item each, and how two of them differ. */
export const edidCodes = {
  /** A format, a depth, a colour space, loudspeakers: as the standards write them. */
  'edid/notation': { said: 'term' },
  /** As a display calls itself. */
  'edid/name': { name: 'name' },
  'edid/tmdsRate': { rate: 'mhz', bitRate: 'gbps' },
  'edid/fixedRate': fixedRate,
  'edid/compressionUpTo': fixedRate,
  'edid/gammaHdr': {},
  /** In cd/m². */
  'edid/peakLuminance': { luminance: 'number' },
  'edid/dynamicMetadata': { type: 'number' },
  'edid/vendorVideo': { oui: 'term' },
  'edid/basicAudio': {},
  'edid/audio': { format: 'term', channels: 'count?', ratesKHz: 'term' },
  'edid/lowLatencyMode': {},
  /** In Hz. */
  'edid/refreshBetween': { lowest: 'number', highest: 'number' },
  'edid/refreshFrom': { lowest: 'number' },
  'edid/there': {},

  'edid/beforeAndNow': { topic: 'edidTopic', before: 'message[]', now: 'message[]' },
  'edid/atDisplayAndPassedOn': { topic: 'edidTopic', display: 'message[]', passedOn: 'message[]' },
  'edid/lostAndGained': bothWays,
  'edid/heldBackAndAdded': bothWays,
  'edid/otherOrder': { topic: 'edidTopic' },
  'edid/onlyBytesChanged': {},
  'edid/onlyBytesDiffer': {},
} as const satisfies CodeTable;
