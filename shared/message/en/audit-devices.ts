import type { auditDeviceCodes } from '../codes/audit-devices.ts';
import type { Sentences } from '../sentences.ts';

export const auditDevicesEn: Sentences<typeof auditDeviceCodes> = {
  receiverModesUnknown: ({ receiver, ports, required }, say) =>
    `A receiver often has to be told to pass ${say.gbps(required)}; what ${say.and(ports.map(say.label))} of ${say.place(receiver)} is set to isn't noted.`,
  lookUpSignalFormats: () => 'Look at the signal format of each input and output in its menu, and note it.',
  extenderOnTheWay: ({ extender }, say) =>
    `${say.start(say.place(extender))} is one more device on the way; extenders over twisted pair are best avoided.`,
  lookWhatExtenderRunsOver: () =>
    'Look what it runs over, and note it; plan an active optical cable in place of twisted pair.',
  processesBesideProcessor: ({ device, processor }, say) =>
    `${say.start(say.place(device))} scales or processes the picture; with ${say.place(processor)} on the way only that one should.`,
  switchProcessingOff: () => 'Note its settings, then switch off its scaling, conversion and processing.',
  processesPicture: ({ device }, say) => `${say.start(say.place(device))} scales or processes the picture.`,
  switchProcessingOffForTheSearch: () =>
    'Note its settings; switch scaling and processing off while looking for the fault.',
  processesBesideAnother: ({ device, other }, say) =>
    `${say.start(say.place(device))} scales or processes the picture, and so does ${say.place(other)}.`,
  leaveProcessingToOne: () => 'Note its settings, then leave scaling and processing to one device.',
  edidReplaced: ({ device }, say) =>
    `${say.start(say.place(device))} answers with an EDID of its own instead of passing on what the display says.`,
  edidLimited: ({ device }, say) =>
    `${say.start(say.place(device))} answers with a limited EDID instead of passing on what the display says.`,
  switchEdidManagementOff: () =>
    'Note its settings, then switch EDID management off; leave it to the processor, if anything.',
  lossAtDevice: ({ loss }, say) => `${say.start(say.message(loss))}.`,
  edidReplacedLosing: ({ device, what }, say) =>
    `${say.start(say.place(device))} shows the sources an EDID of its own, without ${say.and(what.map(say.message))}.`,
  edidLimitedLosing: ({ device, what }, say) =>
    `${say.start(say.place(device))} limits the EDID of what follows it, and takes ${say.and(what.map(say.message))} out.`,
  askForWhatIsTaken: () =>
    'Ask for what it does, or use a device that does more; if it does, correct the record.',
  letDevicePass: () =>
    'Look for a setting that lets it through. If there is none, send the picture past the device, or have it convert on purpose and note that.',
  setInputToAdmit: () =>
    'Set the display’s input to the mode that admits it, and read its EDID again: many admit HDR and fast modes only then.',
  setInputOrAskForListed: () =>
    'Set the display’s input to the mode that admits it, and read its EDID again: many admit fast formats only then. If it still doesn’t, ask for a format that it lists.',
  feedDisplaysAlike: () =>
    'Feed the lesser display from an output that sends it a picture of its own, or ask for what all of them take.',
  askForTenBits: () => 'Ask for 10 bits or more; 4:2:2 brings them at no higher rate.',
  askForLessSound: () =>
    'Ask for fewer channels or a lower rate of sound, or send it compressed; a timing with more blanking has more room.',
  feedsOtherDisplays: ({ device, others, display }, say) =>
    `${say.start(say.place(device))} also feeds ${say.and(others.map((one) => say.place(one)))}, beside ${say.place(display)}.`,
  unplugForTheSearch: ({ cable, at }, say) =>
    `Unplug ${say.place(cable)} at ${say.device(at)} while you look for the fault.`,
  feedsInParallel: ({ device, displays }, say) =>
    `${say.start(say.place(device))} feeds ${say.and(displays.map((one) => say.place(one)))} in parallel.`,
  leaveOneDisplay: () => 'Leave only the display that shows the fault plugged in while you look for it.',
  firmwareBelowLevel: ({ device, firmware, minimum, model }, say) =>
    `Firmware ${say.name(firmware)} of ${say.place(device)} is below ${say.name(minimum)}, the lowest your organisation accepts for model ${say.name(model)}.`,
  updateFirmwareTo: ({ minimum }, say) =>
    `Save its settings and note the level as found, then update it to ${say.name(minimum)} or later.`,
  firmwareLevelUnknown: ({ device, minimum, reason }, say) =>
    `Whether the firmware of ${say.place(device)} reaches ${say.name(minimum)} can't be told: ${say.message(reason)}.`,
  askBeforeUpdating: () =>
    'Update nothing before its maker has said which of the two is newer: an update often can’t be undone.',
  readFirmware: () => 'Read the firmware level in its menu and note it as shown.',
};
