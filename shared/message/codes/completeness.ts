import type { CodeTable } from '../values.ts';

/** What second line would still miss of a case. */
export const completenessCodes = {
  auditNotReviewed: {},
  whatChangedNotAsked: {},
  faultNotSeenBeforeChange: {},
  workedWithoutSide: { reason: 'text' },
  noRetestThatCounts: {},
  noChainAsFound: {},
  noSettingsRead: {},
  noCablePhotos: {},
  noLogOfFault: {},
  firmwareNotKnown: { device: 'place' },
  settingsNotKnown: { device: 'place' },
  edidNotRead: { device: 'place' },
  photosMissing: { cable: 'place', views: 'message[]' },
  viewSourceEnd: {},
  viewSinkEnd: {},
  viewLabel: {},
} as const satisfies CodeTable;
