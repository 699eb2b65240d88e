import type { sourceCodes } from '../codes/sources.ts';
import type { Sentences } from '../sentences.ts';

export const sourcesEn: Sentences<typeof sourceCodes> = {
  commonPractice: () => 'common practice, no source',
  levelOfOrganisation: () => 'level set by the organisation',
  cableCategories: () =>
    'cable categories of the HDMI compliance programme (from memory); which to ask for: common practice',
  computedCapacity: () =>
    "computed: HDMI character rates and the fixed rate link's capacity; what is assumed is named",
  standardFromMemory: ({ standard, clause }) => `${standard}, clause ${clause} (from memory)`,
  streamTypeFromMemory: () => 'HDCP 2.2 on HDMI, stream type (from memory)',
};
