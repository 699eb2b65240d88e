import type { Message } from '../../contract/message.ts';
import type { contentProtectionCodes } from '../codes/content-protection.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { NamedDevice, ValuesOf } from '../values.ts';

const row = (ends: readonly Message[], say: Say): string => ends.map(say.message).join(', ');
const way = ({ source, display }: { source: NamedDevice; display: NamedDevice }, say: Say): string =>
  `von ${say.device(source)} auf ${say.device(display)}`;
const then = (hop: Message | null, say: Say): string => (hop === null ? '' : ` ${say.message(hop)}`);

const hanging = (values: ValuesOf<(typeof contentProtectionCodes)['behindSource']>, say: Say): string => {
  const { source, first, devices, levels, allowedDevices, allowedLevels } = values;
  return `${say.device(source)} findet hinter ${say.place(first, 'dative')} ${devices} ${say.plural(devices, 'Gerät', 'Geräte')} auf ${levels} ${say.plural(levels, 'Ebene', 'Ebenen')}; erlaubt sind ${allowedDevices} und ${allowedLevels}`;
};

export const contentProtectionDe: Sentences<typeof contentProtectionCodes> = {
  hopDoes: ({ link, version }, say) => `Über ${say.place(link, 'accusative')} können beide Enden ${version}.`,
  hopTooOldForType1: ({ link, ends }, say) =>
    `Über ${say.place(link, 'accusative')} darf dieser Inhalt nicht: Er verlangt 2.2 oder neuer, und ${row(ends, say)}.`,
  hopUnprotected: ({ link, ends }, say) =>
    `Über ${say.place(link, 'accusative')} darf dieser Inhalt nicht: Er verlangt Kopierschutz, und ${row(ends, say)}.`,
  hopUnknown: ({ link, ends }, say) =>
    `Über ${say.place(link, 'accusative')} ist es nicht bekannt: ${row(ends, say)}.`,
  endDoesNone: ({ port }, say) => `${say.socket(port)} kann keinen`,
  endNotRecorded: ({ port }, say) => `${say.socket(port)} ist nicht erfasst`,
  endDoes: ({ port, version }, say) => `${say.socket(port)} kann ${version}`,
  type1Shown: (values, say) => `Inhalt vom Stream-Typ 1 ${way(values, say)}: Jede Strecke lässt ihn zu.`,
  type1ShownUnknown: (values, say) =>
    `Inhalt vom Stream-Typ 1 ${way(values, say)}: nicht bekannt.${then(values.hop, say)}`,
  type1NotShown: (values, say) =>
    `Inhalt vom Stream-Typ 1 ${way(values, say)}: nicht so, wie er ist; Quellen weichen meist auf ein geringeres Format aus oder zeigen eine Meldung.${then(values.hop, say)}`,
  protectedShown: (values, say) => `Geschützter Inhalt ${way(values, say)}: Jede Strecke lässt ihn zu.`,
  protectedShownUnknown: (values, say) =>
    `Geschützter Inhalt ${way(values, say)}: nicht bekannt.${then(values.hop, say)}`,
  protectedNotShown: (values, say) =>
    `Geschützter Inhalt ${way(values, say)}: Quellen zeigen stattdessen meist eine Meldung oder nichts.${then(values.hop, say)}`,
  behindSource: (values, say) => `${hanging(values, say)}.`,
  tooMuchBehindSource: (values, say) =>
    `${hanging(values, say)}: zu viel, und vielleicht ist nichts zu sehen.`,
  suspectCable: ({ cable, construction, length }, say) =>
    `${say.start(say.place(cable))}: ${say.construction(construction)}, ${say.metres(length)}.`,
  suspectOpticalCable: ({ cable, construction, length }, say) =>
    `${say.start(say.place(cable))}: ${say.construction(construction)}, ${say.metres(length)}. Optische Kabel führen die Steuerleitungen durch Elektronik, und die versagt so zuerst.`,
  hangFewerBehindSource: () =>
    'Nimm Geräte aus dem Weg, oder speis einen Teil der Anzeigen aus einer anderen Quelle; ein Gerät, das kein Repeater ist, zählt nicht.',
  findProtectionVersions: () =>
    'Finde heraus, welche Version jedes Ende kann, stell sie ein, wo das geht, oder lass das ältere Gerät weg.',
};
