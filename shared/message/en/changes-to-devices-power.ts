import type { ChangeWords } from './change-words.ts';

export const changesOfPower = {
  powerCycle: {
    label: 'Switch the device off and on',
    order: (place) => `Switch off and on ${place}`,
    instructions:
      'Switch this one device off by its mains switch or plug, wait one minute, and switch it on again. Standby is not enough. Touch no other device.',
    afterwards:
      'Nothing to put back. If the fault is gone, wait for it to come back: a restart helps what hangs, until it hangs again.',
  },
  otherOutlet: {
    label: 'Feed it from another outlet',
    order: (place) => `Feed from another outlet: ${place}`,
    instructions:
      'Unplug this device from the mains and plug it into another earthed outlet, away from dimmers and motors, without any adapter.',
    afterwards: 'Leave it there if the fault is gone and the lead lies safely; otherwise plug it back.',
  },
  otherSupply: {
    label: 'Use another power supply',
    order: (place) => `Use another power supply for ${place}`,
    instructions:
      'Put a supply that the maker allows in place of the one that is there, both unplugged from the mains meanwhile.',
    afterwards: 'Leave it if the fault is gone; otherwise put the old one back.',
  },
  clearVents: {
    label: 'Clear the vents',
    order: (place) => `Clear the vents of ${place}`,
    instructions:
      'Take away what covers its vents, give it the room that its maker asks for, remove dust from outside, and let it cool down before you watch.',
    afterwards: 'Nothing to put back.',
  },
  warmByUse: {
    label: 'Warm it up by normal use',
    order: (place) => `Warm up by normal use: ${place}`,
    instructions:
      'Play as usual for about an hour, with doors and covers as the client keeps them, and watch whether the fault comes once it is warm.',
    afterwards: 'Nothing to put back: say whether the fault came once it was warm.',
  },
} satisfies Record<string, ChangeWords>;
