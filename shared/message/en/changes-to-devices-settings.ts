import type { ChangeWords } from './change-words.ts';

export const changesOfSettings = {
  otherTitle: {
    label: 'Play another title',
    order: (place) => `Play another title from ${place}`,
    instructions:
      'Leave source, application and settings as they are, and play another title with the same format: resolution, rate and HDR.',
    afterwards: 'Play the usual title again.',
  },
  otherApplication: {
    label: 'Use another application',
    order: (place) => `Use another application on ${place}`,
    instructions:
      'Leave source and settings as they are, and play content of the same format from another application or another drive of the source.',
    afterwards: 'Go back to the usual application.',
  },
  otherOutputSetting: {
    label: 'Change one output setting of the source',
    order: (place) => `Change one output setting of ${place}`,
    instructions:
      'Write the settings down, then set one of them to another value: what it does with HDR, colour format, depth, or matching the content. Declare the setting, and read the settings out before and after.',
    afterwards: 'Leave it if the fault is gone; otherwise set what it was before.',
  },
  lowerRate: {
    label: 'Lower the rate',
    order: (place) => `Lower the rate that leaves ${place}`,
    instructions:
      'Have it send less: a lower resolution or picture rate, 8 bit, or 4:2:0. Declare the setting.',
    afterwards: 'Set the rate back to what it was.',
  },
  raiseRate: {
    label: 'Raise the rate',
    order: (place) => `Raise the rate that leaves ${place}`,
    instructions:
      'Have it send the most that the chain should carry: the highest picture rate, depth and HDR that the client wants. A picture that then fails more often, or goes, shows a link that is short of margin. Declare the setting; know how to set it back without a picture.',
    afterwards: 'Leave it if the fault is gone; otherwise set the rate back to what it was.',
  },
  controlBusOff: {
    label: 'Switch the control bus off',
    order: (place) => `Switch off the control bus of ${place}`,
    instructions:
      'Switch off in this device’s menu that devices control each other over the cable. Sound that comes back from the display may go with it. Declare the setting.',
    afterwards: 'Leave it off if the fault is gone and nobody misses it; otherwise switch it on again.',
  },
} satisfies Record<string, ChangeWords>;
