import type { completenessCodes } from '../codes/completeness.ts';
import type { Sentences } from '../sentences.ts';

export const completenessEn: Sentences<typeof completenessCodes> = {
  auditNotReviewed: () => 'The audit of the chain was not looked at.',
  whatChangedNotAsked: () => 'It was not asked what has changed since it last worked.',
  faultNotSeenBeforeChange: () => 'No watch has seen the fault before a change was made.',
  workedWithoutSide: ({ reason }, say) => `Work went on without a side: ${say.text(reason)}`,
  noRetestThatCounts: () =>
    'No change has a retest that is long enough, and can be put down to it, to mean something.',
  noChainAsFound: () => 'The chain as found is not recorded, so no firmware level is known.',
  noSettingsRead: () => 'No settings were read out of any device.',
  noCablePhotos: () => 'There are no photos of both ends of the suspect cable and its printed label.',
  noLogOfFault: () => 'No log covers a moment at which the fault was seen.',
  firmwareNotKnown: ({ device }, say) => `The firmware level of ${say.place(device)} is not known.`,
  settingsNotKnown: ({ device }, say) => `The settings of ${say.place(device)} are not known.`,
  edidNotRead: ({ device }, say) => `The EDID at the input of ${say.place(device)} was not read.`,
  photosMissing: ({ cable, views }, say) =>
    `Photos of ${say.place(cable)} are missing: ${views.map(say.message).join(', ')}.`,
  viewSourceEnd: () => 'its source end',
  viewSinkEnd: () => 'its other end',
  viewLabel: () => 'its printed label',
};
