import type { ChangeWords } from './change-words.ts';

export const changesToChains = {
  mainsOffForAll: {
    label: 'Mains off for all, and on in order',
    order: (place) => `Switch all mains off and on in order: ${place}`,
    instructions:
      'Switch every device of the chain off at its switch or plug and leave all off for one minute. Then switch on one after the other, each once the one before is ready: display, processor, receiver, sources.',
    afterwards: 'Nothing to put back. If the fault is gone, something had hung: it doesn’t say what.',
  },
  otherWakeOrder: {
    label: 'Wake the devices in another order',
    order: (place) => `Wake the devices in another order: ${place}`,
    instructions:
      'From standby, wake one device after the other by its own remote control, each once the one before shows that it is ready: display, processor, receiver, source. Try the start as often as before.',
    afterwards: 'It may stay as the way to start if the fault is gone; otherwise start as usual again.',
  },
  ownRemotes: {
    label: 'Use the devices’ own remotes',
    order: (place) => `Use own remotes instead of the control system: ${place}`,
    instructions:
      'Do what the control system’s button does, step by step with the devices’ own remote controls, as often as before.',
    afterwards:
      'It may stay as the way to start if the fault is gone; otherwise use the control system again.',
  },
  disconnectDisturber: {
    label: 'Disconnect or move what may disturb',
    order: (place) => `Disconnect or move what may disturb: ${place}`,
    instructions:
      'Switch off, unplug or move away one thing that may disturb: an appliance, a radio, a dimmer, a charger. One at a time, and write down which.',
    afterwards: 'Leave it away if the fault is gone and the client agrees; otherwise put it back.',
  },
  unplugAerial: {
    label: 'Unplug the aerial or satellite lead',
    order: (place) => `Unplug one aerial or satellite lead: ${place}`,
    instructions:
      'Unplug one aerial or satellite lead from the device that it feeds, and play from another source. Where there are several, one at a time, and write down which.',
    afterwards: 'Plug the lead back into the same socket.',
  },
  unplugNetwork: {
    label: 'Unplug a network lead',
    order: (place) => `Unplug one network lead: ${place}`,
    instructions:
      'Unplug the network lead of one device of the chain, and play what needs no network. One device at a time, and write down which.',
    afterwards: 'Plug the lead back into the same socket.',
  },
  oneSocketCircuit: {
    label: 'Feed all from one socket circuit',
    order: (place) => `Feed all from one socket circuit: ${place}`,
    instructions:
      'Feed every device of the chain from earthed outlets of one circuit, if its fuse and the strip carry the load. Unplug and plug in one after the other; nothing that was earthed loses its earth.',
    afterwards: 'Leave it if the fault is gone and the leads lie safely; otherwise plug everything back.',
  },
} satisfies Record<string, ChangeWords>;
