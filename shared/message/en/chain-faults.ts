import type { chainFaultCodes } from '../codes/chain-faults.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { NamedPlace } from '../values.ts';

const row = (places: readonly NamedPlace[], say: Say): string =>
  say.and(places.map((place) => say.place(place)));

export const chainFaultsEn: Sentences<typeof chainFaultCodes> = {
  devicesOfOneId: ({ id, devices }, say) =>
    `Two devices have the id ${say.quoted(id)}: ${row(devices, say)}.`,
  portsOfOneId: ({ id, device }, say) => `Two ports of ${say.place(device)} have the id ${say.quoted(id)}.`,
  linksOfOneId: ({ id, links }, say) => `Two links have the id ${say.quoted(id)}: ${row(links, say)}.`,
  linkFromUnknownPort: ({ link, port, device }, say) =>
    `Link ${say.quoted(link)} comes from a port ${say.quoted(port)} that ${say.place(device)} doesn't have.`,
  linkToUnknownPort: ({ link, port, device }, say) =>
    `Link ${say.quoted(link)} goes to a port ${say.quoted(port)} that ${say.place(device)} doesn't have.`,
  linkFromUnknownDevice: ({ link, device }, say) =>
    `Link ${say.quoted(link)} comes from a device ${say.quoted(device)} that isn't in the chain.`,
  linkToUnknownDevice: ({ link, device }, say) =>
    `Link ${say.quoted(link)} goes to a device ${say.quoted(device)} that isn't in the chain.`,
  linkWrongWayRound: ({ link, from, to }, say) =>
    `Link ${say.quoted(link)} runs the wrong way, from the input ${say.socket(from)} to the output ${say.socket(to)}; turn it round.`,
  linkBetweenInputs: ({ link, from, to }, say) =>
    `Link ${say.quoted(link)} joins two inputs, ${say.socket(from)} and ${say.socket(to)}; a cable runs from an output to an input.`,
  linkBetweenOutputs: ({ link, from, to }, say) =>
    `Link ${say.quoted(link)} joins two outputs, ${say.socket(from)} and ${say.socket(to)}; a cable runs from an output to an input.`,
  portUsedTwice: ({ port, links }, say) =>
    `Links ${say.and(links.map(say.quoted))} are both plugged into ${say.place(port)}.`,
  lengthNotPositive: ({ link, length }, say) =>
    `The length of ${say.place(link)} is ${say.metres(length)}; it has to be more than nothing.`,
  displayWithOutput: ({ display, output }, say) =>
    `${say.start(say.place(display))} has an output ${say.label(output)}; a chain ends at its displays.`,
  linkIntoItself: ({ link, device }, say) =>
    `Link ${say.quoted(link)} leads from ${say.place(device)} back into itself.`,
  signalLoop: ({ devices, link }, say) =>
    `The signal goes round in a loop: ${[...devices, ...devices.slice(0, 1)].map((one) => say.place(one)).join(' → ')}. Link ${say.quoted(link)} closes it.`,
  deviceUnconnected: ({ device }, say) => `${say.start(say.place(device))} isn't connected to anything.`,
  devicesWithoutSource: ({ devices }, say) =>
    `${say.start(row(devices, say))} are connected to each other, but to no source.`,
  devicesWithoutDisplay: ({ devices }, say) =>
    `${say.start(row(devices, say))} are connected to each other, but to no display.`,
  devicesWithoutEither: ({ devices }, say) =>
    `${say.start(row(devices, say))} are connected to each other, but to no source and no display.`,
};
