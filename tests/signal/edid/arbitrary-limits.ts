import fc from 'fast-check';
import type { EdidLimits } from '../../../shared/signal/edid/index.ts';

export const anyLimits: fc.Arbitrary<EdidLimits> = fc.record(
  {
    maxTmdsCharacterRateMHz: fc.constantFrom(75, 148.5, 165, 225, 300, 340, 594, 600),
    dropFrl: fc.boolean(),
    drop420: fc.boolean(),
    dropHdr: fc.boolean(),
    stereoOnly: fc.boolean(),
  },
  { requiredKeys: [] },
);
