import type { ContentProtectionVersion } from '../contract/chain.ts';
import type {
  colorimetries,
  deviceRoles,
  dynamicRanges,
  findingSeverities,
  pictureFeatures,
} from '../contract/chain-names.ts';
import type { Message } from '../contract/message.ts';
import type { changeKinds } from '../contract/triage-names.ts';
import type { MessageTerms } from './terms.ts';

type OneOf<List extends readonly string[]> = List[number];

/** A device with its name as it was; its id is told where another device of the chain bears the same name. */
export type NamedDevice = {
  deviceId: string;
  /** Null for what is not in the chain. */
  role: OneOf<typeof deviceRoles> | null;
  name: string;
  isShared: boolean;
};
/** A socket of a device by the label printed beside it; its id is told where another socket bears the same label. */
export type NamedPort = { portId: string; label: string; isShared: boolean; device: NamedDevice };
export type NamedLink = {
  linkId: string;
  isExtender: boolean;
  /** What it joins; null where the chain has no such link. */
  ends: { from: NamedPort; to: NamedPort } | null;
};
/** A place in a chain with its names as they were when something was said of it: its id, and what people call it. */
export type NamedPlace =
  | { kind: 'chain'; name: string }
  | ({ kind: 'device' } & NamedDevice)
  | ({ kind: 'port' } & NamedPort)
  | ({ kind: 'link' } & NamedLink)
  /** What no place of the chain explains: something that the fault model does not hold. */
  | { kind: 'outside' };

/** The lists of the contract that have names in every language, as kinds: `role`, `symptom`, ... */
type TermKinds = { [List in keyof MessageTerms]: keyof MessageTerms[List] & string };

/**
 * The kinds of values that a message can hold. All are plain JSON. Numbers carry their unit in the kind's name and are
 * held unrounded; a sentence decides how they are shown.
 */
export type Kinds = {
  place: NamedPlace;
  /** A device by its bare name, without its role. */
  device: NamedDevice;
  /** A socket by device and label, or by its label alone. */
  port: NamedPort;
  /** What a person typed, shown as it was accepted and marked as theirs. */
  text: string;
  /** A name that somebody gave: of a person, a model, a site, a file, a setting. */
  name: string;
  /** A standard's own term or a figure in its notation, the same in every language: `TMDS`, `v1.2`, `/links/0`. */
  term: string;
  count: number;
  number: number;
  minutes: number;
  seconds: number;
  metres: number;
  gbps: number;
  mhz: number;
  milliampere: number;
  /** 0..1. */
  percent: number;
  /** Per hour. */
  rate: number;
  /** A moment, UTC, ISO 8601. */
  moment: string;
  /** A calendar day, ISO 8601. */
  date: string;
  /** A picture format by its figures. */
  format: {
    widthPx: number;
    heightPx: number;
    interlaced: boolean;
    refreshHz: number;
    encoding: 'rgb' | 'ycbcr444' | 'ycbcr422' | 'ycbcr420';
    bitsPerComponent: number;
    dynamicRange?: OneOf<typeof dynamicRanges> | undefined;
    colorimetry?: OneOf<typeof colorimetries> | undefined;
    features?: readonly OneOf<typeof pictureFeatures>[] | undefined;
    threeD?: boolean | undefined;
    sound?: { channels: number; rateKHz: number } | undefined;
  };
  /** How fast a port or cable is driven. */
  mode: { kind: 'tmds'; maxCharacterRateMHz: number } | { kind: 'frl'; lanes: number; gbpsPerLane: number };
  /** How the samples of a picture are sent. */
  encoding: 'rgb' | 'ycbcr444' | 'ycbcr422' | 'ycbcr420';
  flag: boolean;
  /** What a device's own menu says of a setting, as it was written down; numbers and switches as such. */
  setting: string | number | boolean;
  /** The newest content-protection version that a port does. */
  protection: ContentProtectionVersion;
  threeState: 'yes' | 'no' | 'unknown';
  /** The end of a cable nearer the source, or nearer the display. */
  cableEnd: 'source' | 'display';
  /** How a cable lies, against the marks at its plugs. */
  cableDirection: 'notDirectional' | 'asMarked' | 'reversed' | 'unknown';
  route: 'free' | 'inWall' | 'inConduit';
  /** A part of the sentence that is itself a message. */
  message: Message;
  /** A kind of change, by its label; of an organisation's own kind, by the name that it has there. */
  changeKind: OneOf<typeof changeKinds> | { readonly own: string };
  severity: OneOf<typeof findingSeverities>;
  /** Verdict of a retest. */
  verdict: 'cleared' | 'persists' | 'inconclusive';
  /** Where the fault lies, or which way a port goes, seen from a device. */
  side: 'input' | 'output';
  menu: 'stayed' | 'vanished';
  /** What a firmware level is written as. */
  firmwareScheme: 'version' | 'date' | 'buildNumber' | 'hexadecimal';
} & TermKinds;
export type Kind = keyof Kinds;
/** A kind, a list of it (`place[]`), or one that may be null (`minutes?`). */
export type ValueType = Kind | `${Kind}[]` | `${Kind}?`;
/** What one code holds: the names of its values and the kind of each. */
export type CodeTable = { readonly [code: string]: { readonly [value: string]: ValueType } };

export type ValueOf<Type extends ValueType> = Type extends Kind
  ? Kinds[Type]
  : Type extends `${infer Base extends Kind}[]`
    ? readonly Kinds[Base][]
    : Type extends `${infer Base extends Kind}?`
      ? Kinds[Base] | null
      : never;
export type ValuesOf<Entry extends CodeTable[string]> = {
  readonly [Name in keyof Entry]: ValueOf<Entry[Name]>;
};
