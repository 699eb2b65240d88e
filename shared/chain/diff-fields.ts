import type { Device, Link, LinkEnd, Port, Settings } from '../contract/chain.ts';
import { dynamicRangeNames } from '../message/figures.ts';
import { type Message, message, type NamedPlace } from '../message/index.ts';

export type SettingValue = Settings[string];

/** How one field of a device, port or link is compared, and what is said when it differs. */
export type Field<Whole> = {
  /** The contract's name, with a dot where it lies deeper. */
  field: string;
  read: (whole: Whole) => unknown;
  said: (at: NamedPlace, before: Whole, after: Whole) => Message;
};

/** One text for one value, whatever the order of its keys; equal texts are equal values. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(shown).join()}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'undefined';
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${shown(each)}`).join()}}`;
}

/** A field that is said with its value before and after. */
const field = <Whole, Value>(
  name: string,
  read: (whole: Whole) => Value,
  say: (at: NamedPlace, before: Value, after: Value) => Message,
): Field<Whole> => ({
  field: name,
  read,
  said: (at, before, after) => say(at, read(before), read(after)),
});

/** For values too long to be read out. */
const rewritten = <Whole>(
  name: string,
  read: (whole: Whole) => unknown,
  say: Record<'added' | 'removed' | 'changed', (at: NamedPlace) => Message>,
): Field<Whole> => {
  const empty = (value: unknown): boolean => value === null || value === '';
  return field(name, read, (at, before, after) =>
    say[empty(before) ? 'added' : empty(after) ? 'removed' : 'changed'](at),
  );
};
const notes = {
  added: (at: NamedPlace) => message('notesAdded', { at }),
  removed: (at: NamedPlace) => message('notesRemoved', { at }),
  changed: (at: NamedPlace) => message('notesChanged', { at }),
};
const edid = {
  added: (port: NamedPlace) => message('edidAdded', { port }),
  removed: (port: NamedPlace) => message('edidRemoved', { port }),
  changed: (port: NamedPlace) => message('edidChanged', { port }),
};

export const deviceFields: Field<Device>[] = [
  field(
    'name',
    ({ name }) => name,
    (device, before, after) => message('deviceRenamed', { device, before, after }),
  ),
  field(
    'role',
    ({ role }) => role,
    (device, before, after) => message('roleChanged', { device, before, after }),
  ),
  field(
    'model',
    ({ model }) => model,
    (device, before, after) => message('modelChanged', { device, before, after }),
  ),
  field(
    'serial',
    ({ serial }) => serial,
    (device, before, after) => message('serialChanged', { device, before, after }),
  ),
  field(
    'firmware',
    ({ firmware }) => firmware,
    (device, before, after) => message('firmwareChanged', { device, before, after }),
  ),
  field(
    'drawsMenu',
    ({ drawsMenu }) => drawsMenu,
    (device, _, after) => message('drawsMenuChanged', { device, after }),
  ),
  field(
    'menuSurvivesLossOfInput',
    ({ menuSurvivesLossOfInput }) => menuSurvivesLossOfInput,
    (device, before, after) => message('menuSurvivesChanged', { device, before, after }),
  ),
  field(
    'menuKeepsFormat',
    ({ menuKeepsFormat }) => menuKeepsFormat,
    (device, before, after) => message('menuKeepsFormatChanged', { device, before, after }),
  ),
  field(
    'processesPicture',
    ({ processesPicture }) => processesPicture,
    (device, _, after) => message('processesPictureChanged', { device, after }),
  ),
  field(
    'edidHandling',
    ({ edidHandling }) => edidHandling,
    (device, before, after) =>
      message('edidHandlingChanged', { device, before: handled(before), after: handled(after) }),
  ),
  field(
    'outputFormat',
    ({ outputFormat }) => outputFormat,
    (device, before, after) => message('outputFormatChanged', { device, before, after }),
  ),
  field(
    'passes',
    (device) => device.passes,
    (device, before, after) =>
      message('passesChanged', { device, before: passed(before), after: passed(after) }),
  ),
  rewritten('notes', (device) => device.notes, notes),
];

/** What a device passes of what comes with a picture, a clause each; none where nobody noted it. */
function passed(facts: Device['passes']): Message[] {
  const { dynamicRanges, wideColour, deepestBits, features, threeD, toneMaps } = facts ?? {};
  const able = (code: 'passesWideColour' | 'passesThreeD' | 'passesToneMapping', is?: boolean): Message[] =>
    is === undefined ? [] : [message(code, { is })];
  return [
    ...(dynamicRanges
      ? [message('passesHdr', { kinds: dynamicRanges.map((kind) => dynamicRangeNames[kind]).join(', ') })]
      : []),
    ...able('passesWideColour', wideColour),
    ...(deepestBits ? [message('passesBits', { bits: deepestBits })] : []),
    ...(features
      ? [message('passesFeatures', { features: features.map((one) => one.toUpperCase()).join(', ') })]
      : []),
    ...able('passesThreeD', threeD),
    ...able('passesToneMapping', toneMaps),
  ];
}

/** What a device does with the EDID of what follows it, as a clause. */
function handled(handling: Device['edidHandling']): Message {
  if (handling.kind === 'passesOn') return message('edidPassedOn');
  if (handling.kind === 'replaces')
    return handling.edidHex === null
      ? message('edidReplacedByOwn')
      : message('edidReplacedBy', { bytes: handling.edidHex.length / 2 });
  const { maxTmdsCharacterRateMHz: rate } = handling;
  const limits = [
    ...(rate === null ? [] : [message('edidLimitTmds', { rate })]),
    ...(handling.dropsFrl ? [message('edidLimitNoFrl')] : []),
    ...(handling.drops420 ? [message('edidLimitNo420')] : []),
    ...(handling.dropsHdr ? [message('edidLimitNoHdr')] : []),
    ...(handling.stereoOnly ? [message('edidLimitStereo')] : []),
  ];
  return limits.length === 0 ? message('edidIsLimited') : message('edidIsLimitedTo', { limits });
}

function returnAudio<Whole extends { returnAudio?: string | undefined }>(): Field<Whole> {
  return field(
    'returnAudio',
    (whole: Whole) => whole.returnAudio ?? null,
    (at, before, after) => message('returnAudioChanged', { at, before, after }),
  );
}

export const portFields: Field<Port>[] = [
  returnAudio<Port>(),
  field(
    'label',
    ({ label }) => label,
    (port, before, after) => message('labelChanged', { port, before, after }),
  ),
  field(
    'direction',
    ({ direction }) => direction,
    (port, before, after) => message('portSideChanged', { port, before, after }),
  ),
  field(
    'highestMode',
    ({ highestMode }) => highestMode,
    (port, before, after) => message('highestModeChanged', { port, before, after }),
  ),
  field(
    'setMode',
    ({ setMode }) => setMode,
    (port, before, after) => message('setModeChanged', { port, before, after }),
  ),
  field(
    'contentProtection',
    ({ contentProtection }) => contentProtection,
    (port, before, after) => message('contentProtectionChanged', { port, before, after }),
  ),
  rewritten('edidHex', ({ edidHex }) => edidHex, edid),
  field(
    'fiveVoltMa',
    ({ fiveVoltMa }) => fiveVoltMa,
    (port, before, after) => message('fiveVoltChanged', { port, before, after }),
  ),
];

export const linkFields: Field<Link>[] = [
  returnAudio<Link>(),
  field(
    'construction',
    ({ construction }) => construction,
    (cable, before, after) => message('constructionChanged', { cable, before, after }),
  ),
  field(
    'category',
    ({ category }) => category,
    (cable, before, after) => message('categoryChanged', { cable, before, after }),
  ),
  field(
    'certified',
    ({ certified }) => certified,
    (cable, _, after) => message('certifiedChanged', { cable, after }),
  ),
  field(
    'lengthM',
    ({ lengthM }) => lengthM,
    (cable, before, after) => message('lengthChanged', { cable, before, after }),
  ),
  field(
    'direction',
    ({ direction }) => direction,
    (cable, before, after) => message('cableDirectionChanged', { cable, before, after }),
  ),
  field(
    'factoryFittedEnds',
    ({ factoryFittedEnds }) => factoryFittedEnds,
    (cable, before, after) => message('factoryFittedEndsChanged', { cable, before, after }),
  ),
  ...endFields('sourceEnd', 'source'),
  ...endFields('sinkEnd', 'display'),
  field(
    'route',
    ({ route }) => route,
    (cable, before, after) => message('routeChanged', { cable, before, after }),
  ),
  field(
    'installedOn',
    ({ installedOn }) => installedOn,
    (cable, before, after) => message('installedOnChanged', { cable, before, after }),
  ),
  field(
    'drawMa',
    ({ drawMa }) => drawMa,
    (cable, before, after) => message('cableDrawChanged', { cable, before, after }),
  ),
  field(
    'rated',
    ({ rated }) => rated,
    (cable, before, after) => message('ratedChanged', { cable, before: rate(before), after: rate(after) }),
  ),
  field(
    'gaugeAwg',
    ({ gaugeAwg }) => gaugeAwg,
    (cable, before, after) => message('gaugeChanged', { cable, before: awg(before), after: awg(after) }),
  ),
  field(
    'couplers',
    ({ couplers }) => couplers,
    (cable, before, after) =>
      message('couplersChanged', { cable, before: before ?? null, after: after ?? null }),
  ),
  rewritten('notes', (link) => link.notes, notes),
];

const awg = (gauge: number | undefined): string | null => (gauge === undefined ? null : `AWG ${gauge}`);
const rate = (rated: Link['rated']): Message =>
  rated === undefined
    ? message('ratedUnknown')
    : rated.lengthM === null
      ? message('ratedFor', { rate: rated.gbps })
      : message('ratedForAt', { rate: rated.gbps, length: rated.lengthM });

function endFields(which: 'sourceEnd' | 'sinkEnd', end: 'source' | 'display'): Field<Link>[] {
  const endOf = (link: Link): LinkEnd => link[which];
  return [
    field(
      `${which}.needsPower`,
      (link) => endOf(link).needsPower,
      (cable, _, after) => message('endNeedsPowerChanged', { cable, end, after }),
    ),
    field(
      `${which}.powered`,
      (link) => endOf(link).powered,
      (cable, before, after) => message('endPoweredChanged', { cable, end, before, after }),
    ),
    field(
      `${which}.seated`,
      (link) => endOf(link).seated,
      (cable, before, after) => message('endSeatedChanged', { cable, end, before, after }),
    ),
  ];
}
