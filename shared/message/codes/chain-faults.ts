import type { CodeTable } from '../values.ts';

/** Why a chain can't be stored; ids are told as they were typed. */
export const chainFaultCodes = {
  devicesOfOneId: { id: 'name', devices: 'place[]' },
  portsOfOneId: { id: 'name', device: 'place' },
  linksOfOneId: { id: 'name', links: 'place[]' },
  linkFromUnknownPort: { link: 'name', port: 'name', device: 'place' },
  linkToUnknownPort: { link: 'name', port: 'name', device: 'place' },
  linkFromUnknownDevice: { link: 'name', device: 'name' },
  linkToUnknownDevice: { link: 'name', device: 'name' },
  linkWrongWayRound: { link: 'name', from: 'port', to: 'port' },
  linkBetweenInputs: { link: 'name', from: 'port', to: 'port' },
  linkBetweenOutputs: { link: 'name', from: 'port', to: 'port' },
  portUsedTwice: { port: 'place', links: 'name[]' },
  lengthNotPositive: { link: 'place', length: 'metres' },
  displayWithOutput: { display: 'place', output: 'port' },
  linkIntoItself: { link: 'name', device: 'place' },
  /** Devices in the order of the signal, the first one not repeated. */
  signalLoop: { devices: 'place[]', link: 'name' },
  deviceUnconnected: { device: 'place' },
  devicesWithoutSource: { devices: 'place[]' },
  devicesWithoutDisplay: { devices: 'place[]' },
  devicesWithoutEither: { devices: 'place[]' },
} as const satisfies CodeTable;
