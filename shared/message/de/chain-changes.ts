import type { Message } from '../../contract/message.ts';
import type { chainChangeCodes } from '../codes/chain-changes.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds, NamedPlace } from '../values.ts';

const sides = { input: 'Eingang', output: 'Ausgang' };
const newSide = { input: 'Neuer Eingang', output: 'Neuer Ausgang' };
const removedSide = { input: 'Eingang entfernt', output: 'Ausgang entfernt' };
const protections: Record<Kinds['protection'], string> = {
  none: 'keiner',
  '1.4': '1.4',
  '2.2': '2.2',
  '2.3': '2.3',
  unknown: 'nicht bekannt',
};
const directions: Record<Kinds['cableDirection'], string> = {
  notDirectional: 'nicht gerichtet',
  asMarked: 'gelegt wie bezeichnet',
  reversed: 'verkehrt herum',
  unknown: 'Richtung nicht bekannt',
};
const routes: Record<Kinds['route'], string> = {
  free: 'frei verlegt',
  inWall: 'in der Wand',
  inConduit: 'im Rohr',
};
const ends = { source: 'am Quellenende', display: 'am Anzeigenende' };
const known = { yes: 'ja', no: 'nein', unknown: 'nicht bekannt' };
const powered = { yes: 'mit Strom', no: 'ohne Strom', unknown: 'nicht bekannt, ob mit Strom' };
const seated = {
  yes: 'fest gesteckt',
  no: 'nicht fest gesteckt',
  unknown: 'nicht bekannt, ob fest gesteckt',
};
const needsPower = (needs: boolean, end: Kinds['cableEnd']): string =>
  `${needs ? 'braucht Strom' : 'braucht keinen Strom'} ${ends[end]}`;

const yesNo = (value: boolean): string => (value ? 'ja' : 'nein');
const orNone = <Value>(
  value: Value | null,
  words: (value: Value) => string,
  none = 'nicht bekannt',
): string => (value === null ? none : words(value));
const milliampere =
  (say: Say) =>
  (currentMa: number): string =>
    `${say.number(currentMa)} mA`;
const setting =
  (say: Say) =>
  (value: Kinds['setting']): string => {
    if (typeof value === 'boolean') return value ? 'ein' : 'aus';
    return typeof value === 'number' ? say.number(value, 6) : say.name(value);
  };

/** What a field of a device or port was, and what it is. */
const changed = (
  what: string,
  at: NamedPlace,
  [before, after]: readonly [string, string],
  say: Say,
): string => `${what} von ${say.place(at, 'dative')}: ${before} → ${after}`;
/** The same for a cable, in its own words. */
const nowIs = (cable: NamedPlace, [before, after]: readonly [string, string], say: Say): string =>
  `${say.start(say.place(cable))}: jetzt ${after}, vorher ${before}`;
const certified = (value: boolean): string => (value ? 'zertifiziert' : 'nicht zertifiziert');
const fitted = (value: boolean): string => (value ? 'Enden aus der Fabrik' : 'Enden vor Ort montiert');

const noted = (facts: readonly Message[], say: Say): string =>
  facts.length === 0 ? 'nicht notiert' : facts.map(say.message).join(', ');

export const chainChangesDe: Sentences<typeof chainChangeCodes> = {
  firstDescription: () => 'Erste Beschreibung dieser Kette.',
  chainRenamed: ({ before, after }, say) =>
    `Die Kette heißt jetzt ${say.quoted(after)}, vorher ${say.quoted(before)}`,
  formatWanted: ({ format }, say) => `Jetzt gewünscht: ${say.format(format)}`,
  formatNoLongerWanted: ({ format }, say) => `Nicht mehr gewünscht: ${say.format(format)}`,

  deviceAdded: ({ device, model }, say) =>
    `Neu: ${say.place(device)}${orNone(model, (name) => `, Modell ${say.name(name)}`, '')}`,
  deviceRemoved: ({ device, model }, say) =>
    `Entfernt: ${say.place(device)}${orNone(model, (name) => `, Modell ${say.name(name)}`, '')}`,
  deviceRenamed: ({ device, before, after }, say) =>
    changed('Name', device, [say.name(before), say.name(after)], say),
  roleChanged: ({ device, before, after }, say) =>
    changed('Rolle', device, [say.term('role', before), say.term('role', after)], say),
  modelChanged: ({ device, before, after }, say) =>
    changed('Modell', device, [orNone(before, say.name), orNone(after, say.name)], say),
  serialChanged: ({ device, before, after }, say) =>
    changed('Seriennummer', device, [orNone(before, say.name), orNone(after, say.name)], say),
  firmwareChanged: ({ device, before, after }, say) =>
    changed('Firmware', device, [orNone(before, say.name), orNone(after, say.name)], say),
  drawsMenuChanged: ({ device, after }, say) =>
    changed('Eigenes Bildschirmmenü', device, [yesNo(!after), yesNo(after)], say),
  menuSurvivesChanged: ({ device, before, after }, say) =>
    changed('Menü bleibt ohne Eingangssignal', device, [known[before], known[after]], say),
  menuKeepsFormatChanged: ({ device, before, after }, say) =>
    changed('Menü behält das Bildformat', device, [known[before], known[after]], say),
  processesPictureChanged: ({ device, after }, say) =>
    changed('Skalierung oder Bildverarbeitung', device, [yesNo(!after), yesNo(after)], say),
  edidHandlingChanged: ({ device, before, after }, say) =>
    changed('Umgang mit dem EDID', device, [say.message(before), say.message(after)], say),
  edidPassedOn: () => 'wird weitergegeben',
  edidReplacedByOwn: () => 'wird ersetzt',
  edidReplacedBy: ({ bytes }) => `wird durch eines von ${bytes} Byte ersetzt`,
  edidIsLimited: () => 'wird beschränkt',
  edidIsLimitedTo: ({ limits }, say) => `wird beschränkt (${limits.map(say.message).join(', ')})`,
  edidLimitTmds: ({ rate }, say) => `TMDS bis ${say.number(rate, 3)} MHz`,
  edidLimitNoFrl: () => 'kein FRL',
  edidLimitNo420: () => 'kein 4:2:0',
  edidLimitNoHdr: () => 'kein HDR',
  edidLimitStereo: () => 'nur Stereo',
  returnAudioChanged: ({ at, before, after }, say) =>
    changed('Rückton', at, [before ?? 'nicht bekannt', after ?? 'nicht bekannt'], say),
  passesChanged: ({ device, before, after }, say) =>
    changed('Was mit einem Bild kommt', device, [noted(before, say), noted(after, say)], say),
  passesHdr: ({ kinds }) => (kinds === '' ? 'kein HDR' : kinds),
  passesWideColour: ({ is }) => `BT.2020 ${yesNo(is)}`,
  passesBits: ({ bits }) => `bis ${bits} Bit`,
  passesFeatures: ({ features }) => (features === '' ? 'weder VRR noch ALLM noch QMS' : features),
  passesThreeD: ({ is }) => `3D ${yesNo(is)}`,
  passesToneMapping: ({ is }) => `Tonwertanpassung ${yesNo(is)}`,
  outputFormatChanged: ({ device, before, after }, say) =>
    changed(
      'Ausgabeformat',
      device,
      [orNone(before, say.format, 'wie empfangen'), orNone(after, say.format, 'wie empfangen')],
      say,
    ),
  settingChanged: ({ device, setting: key, before, after }, say) =>
    changed(
      `Einstellung ${say.quoted(key)}`,
      device,
      [orNone(before, setting(say), 'nicht erfasst'), orNone(after, setting(say), 'nicht erfasst')],
      say,
    ),

  portAdded: ({ port, side }, say) => `${newSide[side]}: ${say.place(port)}`,
  portRemoved: ({ port, side }, say) => `${removedSide[side]}: ${say.place(port)}`,
  labelChanged: ({ port, before, after }, say) =>
    changed('Beschriftung', port, [say.name(before), say.name(after)], say),
  portSideChanged: ({ port, before, after }, say) =>
    changed('Richtung', port, [sides[before], sides[after]], say),
  highestModeChanged: ({ port, before, after }, say) =>
    changed('Höchste Betriebsart', port, [say.mode(before), say.mode(after)], say),
  setModeChanged: ({ port, before, after }, say) =>
    changed(
      'Betriebsart',
      port,
      [orNone(before, say.mode, 'automatisch'), orNone(after, say.mode, 'automatisch')],
      say,
    ),
  contentProtectionChanged: ({ port, before, after }, say) =>
    changed('Kopierschutz', port, [protections[before], protections[after]], say),
  edidAdded: ({ port }, say) => `EDID von ${say.place(port, 'dative')}: hinzugefügt`,
  edidRemoved: ({ port }, say) => `EDID von ${say.place(port, 'dative')}: entfernt`,
  edidChanged: ({ port }, say) => `EDID von ${say.place(port, 'dative')}: geändert`,
  fiveVoltChanged: ({ port, before, after }, say) =>
    changed('5-V-Strom', port, [orNone(before, milliampere(say)), orNone(after, milliampere(say))], say),

  cableAdded: ({ cable }, say) => `Neu: ${say.place(cable)}`,
  cableRemoved: ({ cable }, say) => `Entfernt: ${say.place(cable)}`,
  cableMoved: ({ cable, from, to }, say) =>
    `${say.start(say.place(cable))} läuft jetzt von ${say.socket(from)} zu ${say.socket(to)}`,
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
        orNone(before, fitted, 'nicht bekannt, wer die Enden montierte'),
        orNone(after, fitted, 'nicht bekannt, wer die Enden montierte'),
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
    changed('Angabe des Herstellers', cable, [say.message(before), say.message(after)], say),
  ratedUnknown: () => 'nicht bekannt',
  ratedFor: ({ rate }, say) => say.gbps(rate),
  ratedForAt: ({ rate, length }, say) => `${say.gbps(rate)} bis ${say.metres(length)}`,
  gaugeChanged: ({ cable, before, after }, say) =>
    changed('Aderstärke', cable, [before ?? 'nicht bekannt', after ?? 'nicht bekannt'], say),
  couplersChanged: ({ cable, before, after }, say) =>
    changed(
      'Kupplungen',
      cable,
      [orNone(before, String, 'nicht bekannt'), orNone(after, String, 'nicht bekannt')],
      say,
    ),
  cableDrawChanged: ({ cable, before, after }, say) =>
    nowIs(cable, [draws(before, say), draws(after, say)], say),

  notesAdded: ({ at }, say) => `Notizen von ${say.place(at, 'dative')}: hinzugefügt`,
  notesRemoved: ({ at }, say) => `Notizen von ${say.place(at, 'dative')}: entfernt`,
  notesChanged: ({ at }, say) => `Notizen von ${say.place(at, 'dative')}: geändert`,
};

const installed = (day: string | null, say: Say): string =>
  day === null ? 'nicht bekannt, wann verlegt' : `verlegt am ${say.date(day)}`;
const draws = (currentMa: number | null, say: Say): string =>
  currentMa === null ? 'nicht bekannt, was es zieht' : `zieht ${milliampere(say)(currentMa)}`;
