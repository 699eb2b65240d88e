import { z } from 'zod';
import {
  colorimetries,
  deviceRoles,
  dynamicRanges,
  encodings,
  findingSeverities,
  hdrKinds,
  linkCategories,
  linkConstructions,
  pictureFeatures,
  returnAudioKinds,
  threeStates,
} from './chain-names.ts';
import { longest } from './limits.ts';
import { message } from './message.ts';
import { misfit } from './misfits.ts';
import { line, placeId, text } from './primitives.ts';

export { deviceRoles, encodings, findingSeverities, linkCategories, linkConstructions };

/**
 * The signal a port can pass. TMDS: the highest character rate in MHz (a tenth of the bit rate of one channel).
 * FRL: lanes and gigabits per second a lane. Source: HDMI 2.1, the fixed rate link's six steps (from memory).
 */
export const signalMode = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('tmds'), maxCharacterRateMHz: z.number().positive().max(600) }),
  z.object({
    kind: z.literal('frl'),
    lanes: z.union([z.literal(3), z.literal(4)]),
    gbpsPerLane: z.union([z.literal(3), z.literal(6), z.literal(8), z.literal(10), z.literal(12)]),
  }),
]);
export type SignalMode = z.infer<typeof signalMode>;

export const contentProtectionVersions = ['none', '1.4', '2.2', '2.3', 'unknown'] as const;
/** The newest content-protection version that a port does. */
export const contentProtectionVersion = z.enum(contentProtectionVersions);
export type ContentProtectionVersion = z.infer<typeof contentProtectionVersion>;

const bitsPerComponent = z.union([z.literal(8), z.literal(10), z.literal(12), z.literal(16)]);

/** A picture format as a client or an installer would ask for it. Heights are of the frame. */
export const videoFormat = z.object({
  widthPx: z.int().min(1).max(16_384),
  heightPx: z.int().min(1).max(16_384),
  interlaced: z.boolean().default(false),
  refreshHz: z.number().min(1).max(1000),
  encoding: z.enum(encodings),
  bitsPerComponent,
  /** Left out: nobody asks for more than SDR. */
  dynamicRange: z.enum(dynamicRanges).optional(),
  colorimetry: z.enum(colorimetries).optional(),
  features: z.array(z.enum(pictureFeatures)).max(pictureFeatures.length).optional(),
  /** Two pictures at once, one above the other: frame packing (HDMI 1.4b, 8.2.3). */
  threeD: z.boolean().optional(),
  /** Linear PCM that comes with it. */
  sound: z.object({ channels: z.int().min(2).max(8), rateKHz: z.number().min(32).max(192) }).optional(),
});
export type VideoFormat = z.infer<typeof videoFormat>;

/** A format with whom it is wanted of. Without a list, of whichever can send or show it at all. */
export const wantedFormat = videoFormat.extend({
  sourceIds: z.array(placeId).max(200).optional(),
  displayIds: z.array(placeId).max(200).optional(),
});
export type WantedFormat = z.infer<typeof wantedFormat>;

const edidHex = z
  .string()
  .regex(/^([0-9a-f]{2})+$/, misfit('fieldNotHexadecimal'))
  .max(65_536);

export const port = z.object({
  id: placeId,
  /** What is printed beside the socket. */
  label: line,
  direction: z.enum(['input', 'output']),
  highestMode: signalMode,
  /** What the port is set to; null where nothing can be set or it was left on automatic. */
  setMode: signalMode.nullable().default(null),
  contentProtection: contentProtectionVersion.default('unknown'),
  /** The EDID read at this port: an input's own, or what an output saw. */
  edidHex: edidHex.nullable().default(null),
  /** 5 V line in mA: what an output supplies, what an input draws; null when not known. */
  fiveVoltMa: z.number().min(0).max(5000).nullable().default(null),
  /** Sound against the picture's direction at this socket: out of a display's input, into a receiver's output; left out where nobody looked. */
  returnAudio: z.enum(returnAudioKinds).optional(),
});
export type Port = z.infer<typeof port>;

export type DeviceRole = (typeof deviceRoles)[number];

/** What a device does with the EDID of what follows it, when it answers for its own inputs. */
export const edidHandling = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('passesOn') }),
  z.object({
    kind: z.literal('limits'),
    /** Highest TMDS character rate let through, MHz; null when only the switches below apply. */
    maxTmdsCharacterRateMHz: z.number().positive().max(600).nullable().default(null),
    dropsFrl: z.boolean().default(false),
    drops420: z.boolean().default(false),
    dropsHdr: z.boolean().default(false),
    stereoOnly: z.boolean().default(false),
  }),
  z.object({ kind: z.literal('replaces'), edidHex: edidHex.nullable().default(null) }),
]);

export const settingValue = z.union([z.string().max(longest.settingValue), z.number(), z.boolean()]);
export const settingKey = z.string().min(1).max(longest.settingKey);
const mostSettings = 500;
/** Settings of a device as key and value, in the words of its own menu. */
export const settings = z
  .record(settingKey, settingValue)
  .refine((value) => Object.keys(value).length <= mostSettings, {
    error: misfit('fieldTooMany'),
    params: { most: mostSettings },
  });
export type Settings = z.infer<typeof settings>;

/**
 * What a device sends, passes or takes of what comes with a picture, as its data sheet or its menu has it. What is left
 * out nobody looked up; a list that is there is whole.
 */
export const passedOn = z.object({
  dynamicRanges: z.array(z.enum(hdrKinds)).max(hdrKinds.length).optional(),
  /** BT.2020 as well as BT.709. */
  wideColour: z.boolean().optional(),
  deepestBits: bitsPerComponent.optional(),
  features: z.array(z.enum(pictureFeatures)).max(pictureFeatures.length).optional(),
  threeD: z.boolean().optional(),
  /** It is set to make another dynamic range of the picture, on purpose. */
  toneMaps: z.boolean().optional(),
});
export type PassedOn = z.infer<typeof passedOn>;

export const device = z.object({
  id: placeId,
  name: line,
  role: z.enum(deviceRoles),
  model: line.nullable().default(null),
  serial: line.nullable().default(null),
  firmware: line.nullable().default(null),
  /** Draws its own on-screen menu into the picture, which is what tells one side of it from the other. */
  drawsMenu: z.boolean().default(false),
  /** The menu stays on the screen when the device's input goes away. Until that is known, a menu that vanishes tells nothing. */
  menuSurvivesLossOfInput: z.enum(threeStates).default('unknown'),
  /** The menu comes in the format of the picture; one that changes it can hide the fault. */
  menuKeepsFormat: z.enum(threeStates).default('unknown'),
  /** Scales, converts or processes the picture as it is set now. */
  processesPicture: z.boolean().default(false),
  edidHandling: edidHandling.default({ kind: 'passesOn' }),
  /** What it sends whatever it receives; null when it sends what it gets. */
  outputFormat: videoFormat.nullable().default(null),
  /** Left out where nobody looked anything up. */
  passes: passedOn.optional(),
  settings: settings.default({}),
  ports: z.array(port).max(64),
  notes: text.default(''),
});
export type Device = z.infer<typeof device>;

export type LinkConstruction = (typeof linkConstructions)[number];

export type LinkCategory = (typeof linkCategories)[number];

const threeState = z.enum(threeStates);
const linkEnd = z.object({
  /** The maker asks for power at this end. */
  needsPower: z.boolean().default(false),
  powered: threeState.default('unknown'),
  seated: threeState.default('unknown'),
});
export type LinkEnd = z.infer<typeof linkEnd>;
const portRef = z.object({ deviceId: placeId, portId: placeId });
export type PortRef = z.infer<typeof portRef>;

export const link = z.object({
  id: placeId,
  from: portRef,
  to: portRef,
  construction: z.enum(linkConstructions),
  category: z.enum(linkCategories).default('unknown'),
  /** The category is certified: its label was seen or scanned. */
  certified: z.boolean().default(false),
  lengthM: z.number().max(1000),
  /** How a directional cable lies: `asMarked` is source end to source. */
  direction: z.enum(['notDirectional', 'asMarked', 'reversed', 'unknown']).default('unknown'),
  /** Ends fitted in a factory, not on site; null when not known. */
  factoryFittedEnds: z.boolean().nullable().default(null),
  sourceEnd: linkEnd.prefault({}),
  sinkEnd: linkEnd.prefault({}),
  route: z.enum(['free', 'inWall', 'inConduit']).default('free'),
  installedOn: z.iso.date().nullable().default(null),
  /** What the cable's own electronics draw from the 5 V line, mA; null when not known. */
  drawMa: z.number().min(0).max(5000).nullable().default(null),
  /** What its maker rates an active cable or an extender for: gross bit rate, and up to which length; left out where not known. */
  rated: z
    .object({ gbps: z.number().positive().max(48), lengthM: z.number().positive().max(1000).nullable() })
    .optional(),
  /** American wire gauge of the data pairs, where it is printed on the jacket. */
  gaugeAwg: z.int().min(18).max(36).optional(),
  /** Couplers and wall plates that join it of several cables; left out where nobody looked. */
  couplers: z.int().min(0).max(10).optional(),
  /** Whether it carries return audio, as tried or by its data sheet; left out where nobody looked. */
  returnAudio: threeState.optional(),
  notes: text.default(''),
});
export type Link = z.infer<typeof link>;

/** One signal chain: a directed graph from sources to displays. Lengths in metres. */
export const chain = z.object({
  name: line,
  devices: z.array(device).max(200),
  links: z.array(link).max(400),
  /** What the client wants to see through this chain. */
  wantedFormats: z.array(wantedFormat).max(40).default([]),
});
export type Chain = z.infer<typeof chain>;
/** A chain as a client sends it, before defaults are filled in. */
export type ChainInput = z.input<typeof chain>;

/** A place in a chain that a refusal, finding or difference points at. */
export const place = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('chain') }),
  z.object({ kind: z.literal('device'), deviceId: placeId }),
  z.object({ kind: z.literal('port'), deviceId: placeId, portId: placeId }),
  z.object({ kind: z.literal('link'), linkId: placeId }),
]);
export type Place = z.infer<typeof place>;

/** One finding of the prerequisite audit. */
export const finding = z.object({
  rule: z.string(),
  severity: z.enum(findingSeverities),
  place,
  placeName: message,
  text: message,
  whatToDo: message,
  source: message,
  /** What the work may hurt somebody with; none when it is done with a menu or by looking. */
  cautions: z.array(message),
});
export type Finding = z.infer<typeof finding>;
