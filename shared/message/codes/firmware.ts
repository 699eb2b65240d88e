import type { CodeTable } from '../values.ts';

/** Why two firmware levels stand as they do to each other; clauses of a sentence. */
export const firmwareCodes = {
  firmwareNotRead: {},
  firmwareWithoutBuild: {},
  firmwareOlder: { firmware: 'name', minimum: 'name' },
  firmwareHashesDiffer: {},
  firmwareSchemesDiffer: { one: 'firmwareScheme', other: 'firmwareScheme' },
  firmwareEditionsDiffer: { one: 'name', other: 'name' },
  firmwareDayOrMonth: {},
  firmwareTwoNumberings: {},
  firmwareUnreadable: { firmware: 'name', reason: 'message' },
  firmwareEmpty: {},
  firmwareWithoutNumber: {},
  firmwareOfSeveralVersions: {},
} as const satisfies CodeTable;
