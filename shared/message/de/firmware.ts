import type { firmwareCodes } from '../codes/firmware.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

const schemes: Record<Kinds['firmwareScheme'], string> = {
  version: 'eine Versionsnummer',
  date: 'ein Datum',
  buildNumber: 'eine bloße Build-Nummer',
  hexadecimal: 'eine hexadezimale Zahl',
};

export const firmwareDe: Sentences<typeof firmwareCodes> = {
  firmwareNotRead: () => 'niemand hat die Firmware bisher gelesen',
  firmwareWithoutBuild: () => 'der Mindeststand nennt einen Build, der gelesene Stand nicht',
  firmwareOlder: ({ firmware, minimum }, say) => `${say.name(firmware)} ist älter als ${say.name(minimum)}`,
  firmwareHashesDiffer: () => 'sie unterscheiden sich nur in einem Hash, der keine Reihenfolge hat',
  firmwareSchemesDiffer: ({ one, other }) => `das eine ist ${schemes[one]}, das andere ${schemes[other]}`,
  firmwareEditionsDiffer: ({ one, other }, say) =>
    `das eine ist von ${say.quoted(one)}, das andere von ${say.quoted(other)}`,
  firmwareDayOrMonth: () => 'es hängt davon ab, ob der Tag oder der Monat vorn steht',
  firmwareTwoNumberings: () =>
    'es hängt davon ab, ob der Hersteller Teil für Teil zählt oder als Dezimalzahl (2 und 20 können dasselbe sein); frag den Hersteller, was neuer ist',
  firmwareUnreadable: ({ firmware, reason }, say) =>
    `${say.quoted(firmware)} lässt sich nicht lesen: ${say.message(reason)}`,
  firmwareEmpty: () => 'nichts ist notiert',
  firmwareWithoutNumber: () => 'es steht keine Zahl darin',
  firmwareOfSeveralVersions: () => 'es nennt mehrere Versionen',
};
