import type { firmwareCodes } from '../codes/firmware.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds } from '../values.ts';

const schemes: Record<Kinds['firmwareScheme'], string> = {
  version: 'a version number',
  date: 'a date',
  buildNumber: 'a bare build number',
  hexadecimal: 'a hexadecimal number',
};

export const firmwareEn: Sentences<typeof firmwareCodes> = {
  firmwareNotRead: () => 'nobody has read the firmware yet',
  firmwareWithoutBuild: () => 'the minimum names a build, and the reading has none',
  firmwareOlder: ({ firmware, minimum }, say) => `${say.name(firmware)} is older than ${say.name(minimum)}`,
  firmwareHashesDiffer: () => 'they differ only in a hash, which has no order',
  firmwareSchemesDiffer: ({ one, other }) => `one is ${schemes[one]}, the other ${schemes[other]}`,
  firmwareEditionsDiffer: ({ one, other }, say) =>
    `one is of ${say.quoted(one)}, the other of ${say.quoted(other)}`,
  firmwareDayOrMonth: () => 'it depends on whether the day or the month comes first',
  firmwareTwoNumberings: () =>
    'it depends on whether the maker counts them part by part or as decimals (2 and 20 may be the same); ask the maker which is newer',
  firmwareUnreadable: ({ firmware, reason }, say) =>
    `${say.quoted(firmware)} can't be read: ${say.message(reason)}`,
  firmwareEmpty: () => 'nothing is written down',
  firmwareWithoutNumber: () => 'there is no number in it',
  firmwareOfSeveralVersions: () => 'it names several versions',
};
