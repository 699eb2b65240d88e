import type { Message } from '../../contract/message.ts';
import type { chainChangeCodes } from '../codes/chain-changes.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds, NamedPlace } from '../values.ts';

const sides = { input: 'input', output: 'output' };
const newSide = { input: 'New input', output: 'New output' };
const removedSide = { input: 'Removed input', output: 'Removed output' };
const protections: Record<Kinds['protection'], string> = {
  none: 'none',
  '1.4': '1.4',
  '2.2': '2.2',
  '2.3': '2.3',
  unknown: 'not known',
};
const directions: Record<Kinds['cableDirection'], string> = {
  notDirectional: 'not directional',
  asMarked: 'laid as marked',
  reversed: 'reversed',
  unknown: 'direction not known',
};
const routes: Record<Kinds['route'], string> = {
  free: 'laid free',
  inWall: 'in the wall',
  inConduit: 'in conduit',
};
const ends = { source: 'at the source end', display: 'at the display end' };
const known = { yes: 'yes', no: 'no', unknown: 'not known' };
const powered = { yes: 'powered', no: 'not powered', unknown: 'not known whether powered' };
const seated = { yes: 'seated', no: 'not seated', unknown: 'not known whether seated' };
const needsPower = (needs: boolean, end: Kinds['cableEnd']): string =>
  `${needs ? 'needs power' : 'needs no power'} ${ends[end]}`;

const yesNo = (value: boolean): string => (value ? 'yes' : 'no');
const orNone = <Value>(value: Value | null, words: (value: Value) => string, none = 'not known'): string =>
  value === null ? none : words(value);
const milliampere =
  (say: Say) =>
  (currentMa: number): string =>
    `${say.number(currentMa)} mA`;
const setting =
  (say: Say) =>
  (value: Kinds['setting']): string => {
    if (typeof value === 'boolean') return value ? 'on' : 'off';
    return typeof value === 'number' ? say.number(value, 6) : say.name(value);
  };

/** What a field of a device or port was, and what it is. */
const changed = (
  what: string,
  at: NamedPlace,
  [before, after]: readonly [string, string],
  say: Say,
): string => `${what} of ${say.place(at)}: ${before} → ${after}`;
/** The same for a cable, in its own words. */
const nowIs = (cable: NamedPlace, [before, after]: readonly [string, string], say: Say): string =>
  `${say.start(say.place(cable))}: now ${after}, was ${before}`;
const certified = (value: boolean): string => (value ? 'certified' : 'not certified');
const fitted = (value: boolean): string => (value ? 'ends fitted in a factory' : 'ends fitted on site');

const noted = (facts: readonly Message[], say: Say): string =>
  facts.length === 0 ? 'not noted' : facts.map(say.message).join(', ');

export const chainChangesEn: Sentences<typeof chainChangeCodes> = {
  firstDescription: () => 'First description of this chain.',
  chainRenamed: ({ before, after }, say) =>
    `The chain is now called ${say.quoted(after)}, was ${say.quoted(before)}`,
  formatWanted: ({ format }, say) => `Now wanted: ${say.format(format)}`,
  formatNoLongerWanted: ({ format }, say) => `No longer wanted: ${say.format(format)}`,

  deviceAdded: ({ device, model }, say) =>
    `New: ${say.place(device)}${orNone(model, (name) => `, model ${say.name(name)}`, '')}`,
  deviceRemoved: ({ device, model }, say) =>
    `Removed: ${say.place(device)}${orNone(model, (name) => `, model ${say.name(name)}`, '')}`,
  deviceRenamed: ({ device, before, after }, say) =>
    changed('Name', device, [say.name(before), say.name(after)], say),
  roleChanged: ({ device, before, after }, say) =>
    changed('Role', device, [say.term('role', before), say.term('role', after)], say),
  modelChanged: ({ device, before, after }, say) =>
    changed('Model', device, [orNone(before, say.name), orNone(after, say.name)], say),
  serialChanged: ({ device, before, after }, say) =>
    changed('Serial number', device, [orNone(before, say.name), orNone(after, say.name)], say),
  firmwareChanged: ({ device, before, after }, say) =>
    changed('Firmware', device, [orNone(before, say.name), orNone(after, say.name)], say),
  drawsMenuChanged: ({ device, after }, say) =>
    changed('Own on-screen menu', device, [yesNo(!after), yesNo(after)], say),
  menuSurvivesChanged: ({ device, before, after }, say) =>
    changed('Menu stays without an input', device, [known[before], known[after]], say),
  menuKeepsFormatChanged: ({ device, before, after }, say) =>
    changed('Menu keeps the picture’s format', device, [known[before], known[after]], say),
  processesPictureChanged: ({ device, after }, say) =>
    changed('Scaling or processing', device, [yesNo(!after), yesNo(after)], say),
  edidHandlingChanged: ({ device, before, after }, say) =>
    changed('EDID handling', device, [say.message(before), say.message(after)], say),
  edidPassedOn: () => 'passed on',
  edidReplacedByOwn: () => 'replaced',
  edidReplacedBy: ({ bytes }) => `replaced by one of ${bytes} bytes`,
  edidIsLimited: () => 'limited',
  edidIsLimitedTo: ({ limits }, say) => `limited (${limits.map(say.message).join(', ')})`,
  edidLimitTmds: ({ rate }, say) => `TMDS up to ${say.number(rate, 3)} MHz`,
  edidLimitNoFrl: () => 'no FRL',
  edidLimitNo420: () => 'no 4:2:0',
  edidLimitNoHdr: () => 'no HDR',
  edidLimitStereo: () => 'stereo only',
  returnAudioChanged: ({ at, before, after }, say) =>
    changed('Return audio', at, [before ?? 'not known', after ?? 'not known'], say),
  passesChanged: ({ device, before, after }, say) =>
    changed('What comes with a picture', device, [noted(before, say), noted(after, say)], say),
  passesHdr: ({ kinds }) => (kinds === '' ? 'no HDR' : kinds),
  passesWideColour: ({ is }) => `BT.2020 ${yesNo(is)}`,
  passesBits: ({ bits }) => `up to ${bits} bits`,
  passesFeatures: ({ features }) => (features === '' ? 'no VRR, ALLM or QMS' : features),
  passesThreeD: ({ is }) => `3D ${yesNo(is)}`,
  passesToneMapping: ({ is }) => `tone mapping ${yesNo(is)}`,
  outputFormatChanged: ({ device, before, after }, say) =>
    changed(
      'Output format',
      device,
      [orNone(before, say.format, 'as received'), orNone(after, say.format, 'as received')],
      say,
    ),
  settingChanged: ({ device, setting: key, before, after }, say) =>
    changed(
      `Setting ${say.quoted(key)}`,
      device,
      [orNone(before, setting(say), 'not recorded'), orNone(after, setting(say), 'not recorded')],
      say,
    ),

  portAdded: ({ port, side }, say) => `${newSide[side]}: ${say.place(port)}`,
  portRemoved: ({ port, side }, say) => `${removedSide[side]}: ${say.place(port)}`,
  labelChanged: ({ port, before, after }, say) =>
    changed('Label', port, [say.name(before), say.name(after)], say),
  portSideChanged: ({ port, before, after }, say) =>
    changed('Direction', port, [sides[before], sides[after]], say),
  highestModeChanged: ({ port, before, after }, say) =>
    changed('Highest mode', port, [say.mode(before), say.mode(after)], say),
  setModeChanged: ({ port, before, after }, say) =>
    changed('Mode', port, [orNone(before, say.mode, 'automatic'), orNone(after, say.mode, 'automatic')], say),
  contentProtectionChanged: ({ port, before, after }, say) =>
    changed('Content protection', port, [protections[before], protections[after]], say),
  edidAdded: ({ port }, say) => `EDID of ${say.place(port)}: added`,
  edidRemoved: ({ port }, say) => `EDID of ${say.place(port)}: removed`,
  edidChanged: ({ port }, say) => `EDID of ${say.place(port)}: changed`,
  fiveVoltChanged: ({ port, before, after }, say) =>
    changed('5 V current', port, [orNone(before, milliampere(say)), orNone(after, milliampere(say))], say),

  cableAdded: ({ cable }, say) => `New: ${say.place(cable)}`,
  cableRemoved: ({ cable }, say) => `Removed: ${say.place(cable)}`,
  cableMoved: ({ cable, from, to }, say) =>
    `${say.start(say.place(cable))} now runs from ${say.socket(from)} to ${say.socket(to)}`,
  constructionChanged: ({ cable, before, after }, say) =>
    nowIs(cable, [say.construction(before), say.construction(after)], say),
  categoryChanged: ({ cable, before, after }, say) =>
    nowIs(cable, [say.category(before), say.category(after)], say),
  certifiedChanged: ({ cable, after }, say) => nowIs(cable, [certified(!after), certified(after)], say),
  lengthChanged: ({ cable, before, after }, say) =>
    nowIs(cable, [say.metres(before), say.metres(after)], say),
  cableDirectionChanged: ({ cable, before, after }, say) =>
    nowIs(cable, [directions[before], directions[after]], say),
  factoryFittedEndsChanged: ({ cable, before, after }, say) =>
    nowIs(
      cable,
      [
        orNone(before, fitted, 'not known who fitted the ends'),
        orNone(after, fitted, 'not known who fitted the ends'),
      ],
      say,
    ),
  endNeedsPowerChanged: ({ cable, end, after }, say) =>
    nowIs(cable, [needsPower(!after, end), needsPower(after, end)], say),
  endPoweredChanged: ({ cable, end, before, after }, say) =>
    nowIs(cable, [`${powered[before]} ${ends[end]}`, `${powered[after]} ${ends[end]}`], say),
  endSeatedChanged: ({ cable, end, before, after }, say) =>
    nowIs(cable, [`${seated[before]} ${ends[end]}`, `${seated[after]} ${ends[end]}`], say),
  routeChanged: ({ cable, before, after }, say) => nowIs(cable, [routes[before], routes[after]], say),
  installedOnChanged: ({ cable, before, after }, say) =>
    nowIs(cable, [installed(before, say), installed(after, say)], say),
  ratedChanged: ({ cable, before, after }, say) =>
    changed('Maker’s rating', cable, [say.message(before), say.message(after)], say),
  ratedUnknown: () => 'not known',
  ratedFor: ({ rate }, say) => say.gbps(rate),
  ratedForAt: ({ rate, length }, say) => `${say.gbps(rate)} up to ${say.metres(length)}`,
  gaugeChanged: ({ cable, before, after }, say) =>
    changed('Wire gauge', cable, [before ?? 'not known', after ?? 'not known'], say),
  couplersChanged: ({ cable, before, after }, say) =>
    changed(
      'Couplers',
      cable,
      [orNone(before, String, 'not known'), orNone(after, String, 'not known')],
      say,
    ),
  cableDrawChanged: ({ cable, before, after }, say) =>
    nowIs(cable, [draws(before, say), draws(after, say)], say),

  notesAdded: ({ at }, say) => `Notes of ${say.place(at)}: added`,
  notesRemoved: ({ at }, say) => `Notes of ${say.place(at)}: removed`,
  notesChanged: ({ at }, say) => `Notes of ${say.place(at)}: changed`,
};

const installed = (day: string | null, say: Say): string =>
  day === null ? 'not known when installed' : `installed on ${say.date(day)}`;
const draws = (currentMa: number | null, say: Say): string =>
  currentMa === null ? 'not known what it draws' : `draws ${milliampere(say)(currentMa)}`;
