import type { Message } from '../../contract/message.ts';
import type { contentProtectionCodes } from '../codes/content-protection.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { NamedDevice, ValuesOf } from '../values.ts';

const row = (ends: readonly Message[], say: Say): string => ends.map(say.message).join(', ');
const way = ({ source, display }: { source: NamedDevice; display: NamedDevice }, say: Say): string =>
  `from ${say.device(source)} on ${say.device(display)}`;
const then = (hop: Message | null, say: Say): string => (hop === null ? '' : ` ${say.message(hop)}`);

const hanging = (values: ValuesOf<(typeof contentProtectionCodes)['behindSource']>, say: Say): string => {
  const { source, first, devices, levels, allowedDevices, allowedLevels } = values;
  return `${say.device(source)} meets ${devices} ${say.plural(devices, 'device', 'devices')} on ${levels} ${say.plural(levels, 'level', 'levels')} behind ${say.place(first)}; ${allowedDevices} and ${allowedLevels} are allowed`;
};

export const contentProtectionEn: Sentences<typeof contentProtectionCodes> = {
  hopDoes: ({ link, version }, say) => `Over ${say.place(link)} both ends do ${version}.`,
  hopTooOldForType1: ({ link, ends }, say) =>
    `Over ${say.place(link)} this content may not go: it asks for 2.2 or newer, and ${row(ends, say)}.`,
  hopUnprotected: ({ link, ends }, say) =>
    `Over ${say.place(link)} this content may not go: it asks for content protection, and ${row(ends, say)}.`,
  hopUnknown: ({ link, ends }, say) => `Over ${say.place(link)} it isn’t known: ${row(ends, say)}.`,
  endDoesNone: ({ port }, say) => `${say.socket(port)} does none`,
  endNotRecorded: ({ port }, say) => `${say.socket(port)} isn’t recorded`,
  endDoes: ({ port, version }, say) => `${say.socket(port)} does ${version}`,
  type1Shown: (values, say) => `Content of stream type 1 ${way(values, say)}: every hop allows it.`,
  type1ShownUnknown: (values, say) =>
    `Content of stream type 1 ${way(values, say)}: not known.${then(values.hop, say)}`,
  type1NotShown: (values, say) =>
    `Content of stream type 1 ${way(values, say)}: not as it is; sources commonly fall back to a lower format, or show a message.${then(values.hop, say)}`,
  protectedShown: (values, say) => `Protected content ${way(values, say)}: every hop allows it.`,
  protectedShownUnknown: (values, say) =>
    `Protected content ${way(values, say)}: not known.${then(values.hop, say)}`,
  protectedNotShown: (values, say) =>
    `Protected content ${way(values, say)}: sources commonly show a message in its place, or nothing.${then(values.hop, say)}`,
  behindSource: (values, say) => `${hanging(values, say)}.`,
  tooMuchBehindSource: (values, say) => `${hanging(values, say)}: too many, and it may show nothing.`,
  suspectCable: ({ cable, construction, length }, say) =>
    `${say.start(say.place(cable))}: ${say.construction(construction)}, ${say.metres(length)}.`,
  suspectOpticalCable: ({ cable, construction, length }, say) =>
    `${say.start(say.place(cable))}: ${say.construction(construction)}, ${say.metres(length)}. Optical cables carry the control lines through electronics, and these fail in this way first.`,
  hangFewerBehindSource: () =>
    'Take devices out of the way, or feed part of the displays from another source; a device that isn’t a repeater doesn’t count.',
  findProtectionVersions: () =>
    'Find out which version each end does, set it where it can be set, or leave the older device out.',
};
