import type { ChangeWords } from './change-words.ts';

export const changesToLinks = {
  reseat: {
    label: 'Reseat both plugs',
    order: (place) => `Reseat the plugs of ${place}`,
    instructions:
      'Switch both devices to standby. Pull the plug at each end, look for bent contacts and dirt, and push it fully home. Touch no other cable.',
    afterwards: 'Nothing to put back.',
  },
  flexCable: {
    label: 'Flex the cable by hand',
    order: (place) => `Flex by hand ${place}`,
    instructions:
      'With the picture running, bend the cable gently to and fro near each plug and along its length, a minute at each end, and watch for the fault to come. That seats its plugs anew too.',
    afterwards: 'Nothing to put back: say whether the fault came while it was flexed.',
  },
  replaceCable: {
    label: 'Replace the cable',
    order: (place) => `Replace ${place}`,
    instructions:
      'Put a cable known to be good into the same two ports. A directional cable goes with its source end to the source; power it where its maker asks for that. Mark the old cable and keep it.',
    afterwards: 'Keep the new cable if the fault is gone; otherwise put the old one back.',
  },
  temporaryCable: {
    label: 'Lay a temporary cable across the floor',
    order: (place) => `Lay a temporary cable in place of ${place}`,
    instructions:
      'Lay a cable known to be good from port to port in the open, and leave the fixed cable where it is with both its plugs out.',
    afterwards: 'Take the temporary cable up and plug the fixed one back into the same two ports.',
  },
  removeCoupler: {
    label: 'Take a coupler, wall plate or adapter out of the way',
    order: (place) => `Take out what joins ${place}`,
    instructions:
      'Where this cable passes through a coupler, a wall plate or an adapter, join both sockets by one cable in one piece instead, in the open. Leave what is in the wall as it is, with its plugs out.',
    afterwards:
      'Leave it if the fault is gone and the cable lies safely; otherwise join everything as it was.',
  },
  unplugBranch: {
    label: 'Unplug the parallel branch',
    order: (place) => `Unplug the branch: ${place}`,
    instructions:
      'Pull the plug of this branch at the device that feeds it. A display in standby still takes part while it is plugged in.',
    afterwards: 'Plug the branch back into the same port.',
  },
  insertSyncSwitch: {
    label: 'Insert a switch that regenerates sync',
    order: (place) => `Insert a switch that regenerates sync into ${place}`,
    instructions:
      'Put the switch into this link, at the end nearer to the display, with its scaling and its own EDID off.',
    afterwards: 'It may stay if the fault is gone; otherwise take it out and join the link as it was.',
  },
} satisfies Record<string, ChangeWords>;
