import type { Device, Link, LinkEnd, Port, Settings } from '../contract/chain.ts';
import { categoryNames, constructionNames, metres } from './link-words.ts';
import { formatName, modeName } from './signal-mode.ts';

export type SettingValue = Settings[string];

/** How one field of a device, port or link is compared, and what is said when it differs. */
export type Field<Whole> = {
  /** The contract's name, with a dot where it lies deeper. */
  field: string;
  read: (whole: Whole) => unknown;
  sentence: (name: string, before: Whole, after: Whole) => string;
};

/** One text for one value, whatever the order of its keys; equal texts are equal values. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(shown).join()}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'undefined';
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${shown(each)}`).join()}}`;
}

export function settingText(value: SettingValue | null): string {
  if (value === null) return 'not recorded';
  return typeof value === 'boolean' ? (value ? 'on' : 'off') : String(value);
}

/** `Firmware of processor 'Cinema processor': 1.8 → 1.8.1` */
function of<Whole, Value>(
  field: string,
  what: string,
  read: (whole: Whole) => Value,
  words: (value: NonNullable<Value>) => string,
  none = 'not known',
): Field<Whole> {
  const text = (whole: Whole): string => {
    const value = read(whole);
    return value === null || value === undefined ? none : words(value);
  };
  const sentence = (name: string, before: Whole, after: Whole): string =>
    `${what} of ${name}: ${text(before)} → ${text(after)}`;
  return { field, read, sentence };
}

/** `Cable L3 (Receiver to Projector): now 10 m, was 2 m` */
function now<Whole, Value>(
  field: string,
  read: (whole: Whole) => Value,
  words: (value: Value) => string,
): Field<Whole> {
  const sentence = (name: string, before: Whole, after: Whole): string =>
    `${name}: now ${words(read(after))}, was ${words(read(before))}`;
  return { field, read, sentence };
}

/** For values too long to be read out. */
function rewritten<Whole>(field: string, what: string, read: (whole: Whole) => unknown): Field<Whole> {
  const empty = (value: unknown): boolean => value === null || value === '';
  const sentence = (name: string, before: Whole, after: Whole): string => {
    const how = empty(read(before)) ? 'added' : empty(read(after)) ? 'removed' : 'changed';
    return `${what} of ${name}: ${how}`;
  };
  return { field, read, sentence };
}

const asIs = (value: string): string => value;
const milliamperes = (value: number): string => `${value} mA`;
const yesNo = (value: boolean): string => (value ? 'yes' : 'no');

export const deviceFields: Field<Device>[] = [
  of('name', 'Name', ({ name }) => name, asIs),
  of('role', 'Role', ({ role }) => role, asIs),
  of('model', 'Model', ({ model }) => model, asIs),
  of('serial', 'Serial number', ({ serial }) => serial, asIs),
  of('firmware', 'Firmware', ({ firmware }) => firmware, asIs),
  of('drawsMenu', 'Own on-screen menu', ({ drawsMenu }) => drawsMenu, yesNo),
  of('processesPicture', 'Scaling or processing', ({ processesPicture }) => processesPicture, yesNo),
  of('edidHandling', 'EDID handling', ({ edidHandling }) => edidHandling, edidWords),
  of('outputFormat', 'Output format', ({ outputFormat }) => outputFormat, formatName, 'as received'),
  rewritten('notes', 'Notes', ({ notes }) => notes),
];

function edidWords(handling: Device['edidHandling']): string {
  if (handling.kind === 'passesOn') return 'passed on';
  if (handling.kind === 'replaces')
    return handling.edidHex === null ? 'replaced' : `replaced by one of ${handling.edidHex.length / 2} bytes`;
  const limits = [
    handling.maxTmdsCharacterRateMHz === null ? null : `TMDS up to ${handling.maxTmdsCharacterRateMHz} MHz`,
    handling.dropsFrl ? 'no FRL' : null,
    handling.drops420 ? 'no 4:2:0' : null,
    handling.dropsHdr ? 'no HDR' : null,
    handling.stereoOnly ? 'stereo only' : null,
  ].filter((limit) => limit !== null);
  return limits.length === 0 ? 'limited' : `limited (${limits.join(', ')})`;
}

export const portFields: Field<Port>[] = [
  of('label', 'Label', ({ label }) => label, asIs),
  of('direction', 'Direction', ({ direction }) => direction, asIs),
  of('highestMode', 'Highest mode', ({ highestMode }) => highestMode, modeName),
  of('setMode', 'Mode', ({ setMode }) => setMode, modeName, 'automatic'),
  of('contentProtection', 'Content protection', ({ contentProtection }) => contentProtection, protection),
  rewritten('edidHex', 'EDID', ({ edidHex }) => edidHex),
  of('fiveVoltMa', '5 V current', ({ fiveVoltMa }) => fiveVoltMa, milliamperes),
];

function protection(version: Port['contentProtection']): string {
  return version === 'unknown' ? 'not known' : version;
}

const directionNames: Record<Link['direction'], string> = {
  notDirectional: 'not directional',
  asMarked: 'laid as marked',
  reversed: 'reversed',
  unknown: 'direction not known',
};
const routeNames: Record<Link['route'], string> = {
  free: 'laid free',
  inWall: 'in the wall',
  inConduit: 'in conduit',
};

export const linkFields: Field<Link>[] = [
  now(
    'construction',
    ({ construction }) => construction,
    (value) => constructionNames[value],
  ),
  now(
    'category',
    ({ category }) => category,
    (value) => categoryNames[value],
  ),
  now(
    'certified',
    ({ certified }) => certified,
    (value) => (value ? 'certified' : 'not certified'),
  ),
  now('lengthM', ({ lengthM }) => lengthM, metres),
  now(
    'direction',
    ({ direction }) => direction,
    (value) => directionNames[value],
  ),
  now(
    'factoryFittedEnds',
    ({ factoryFittedEnds }) => factoryFittedEnds,
    (value) =>
      value === null
        ? 'not known who fitted the ends'
        : value
          ? 'ends fitted in a factory'
          : 'ends fitted on site',
  ),
  ...endFields('sourceEnd', 'source end', ({ sourceEnd }) => sourceEnd),
  ...endFields('sinkEnd', 'display end', ({ sinkEnd }) => sinkEnd),
  now(
    'route',
    ({ route }) => route,
    (value) => routeNames[value],
  ),
  now(
    'installedOn',
    ({ installedOn }) => installedOn,
    (value) => (value === null ? 'not known when installed' : `installed on ${value}`),
  ),
  now(
    'drawMa',
    ({ drawMa }) => drawMa,
    (value) => (value === null ? 'not known what it draws' : `draws ${milliamperes(value)}`),
  ),
  rewritten('notes', 'Notes', ({ notes }) => notes),
];

function endFields(field: string, where: string, endOf: (link: Link) => LinkEnd): Field<Link>[] {
  const state = (value: LinkEnd['powered'], word: string): string =>
    value === 'unknown' ? `not known whether ${word}` : value === 'yes' ? word : `not ${word}`;
  return [
    now(
      `${field}.needsPower`,
      (link) => endOf(link).needsPower,
      (value) => (value ? `needs power at the ${where}` : `needs no power at the ${where}`),
    ),
    now(
      `${field}.powered`,
      (link) => endOf(link).powered,
      (value) => `${state(value, 'powered')} at the ${where}`,
    ),
    now(
      `${field}.seated`,
      (link) => endOf(link).seated,
      (value) => `${state(value, 'seated')} at the ${where}`,
    ),
  ];
}
