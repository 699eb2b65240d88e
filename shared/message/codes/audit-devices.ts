import type { CodeTable } from '../values.ts';

/** What the prerequisite audit says of devices, and what to do about it. */
export const auditDeviceCodes = {
  receiverModesUnknown: { receiver: 'place', ports: 'port[]', required: 'gbps' },
  lookUpSignalFormats: {},
  extenderOnTheWay: { extender: 'place' },
  lookWhatExtenderRunsOver: {},
  processesBesideProcessor: { device: 'place', processor: 'place' },
  switchProcessingOff: {},
  processesPicture: { device: 'place' },
  switchProcessingOffForTheSearch: {},
  processesBesideAnother: { device: 'place', other: 'place' },
  leaveProcessingToOne: {},
  edidReplaced: { device: 'place' },
  edidLimited: { device: 'place' },
  switchEdidManagementOff: {},
  feedsOtherDisplays: { device: 'place', others: 'place[]', display: 'place' },
  unplugForTheSearch: { cable: 'place', at: 'device' },
  feedsInParallel: { device: 'place', displays: 'place[]' },
  leaveOneDisplay: {},
  firmwareBelowLevel: { device: 'place', firmware: 'name', minimum: 'name', model: 'name' },
  updateFirmwareTo: { minimum: 'name' },
  firmwareLevelUnknown: { device: 'place', minimum: 'name', reason: 'message' },
  readFirmware: {},
} as const satisfies CodeTable;
