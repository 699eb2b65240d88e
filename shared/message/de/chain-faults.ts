import type { chainFaultCodes } from '../codes/chain-faults.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { NamedPlace } from '../values.ts';

const row = (places: readonly NamedPlace[], say: Say): string =>
  say.and(places.map((place) => say.place(place)));

export const chainFaultsDe: Sentences<typeof chainFaultCodes> = {
  devicesOfOneId: ({ id, devices }, say) =>
    `Zwei Geräte haben die Kennung ${say.quoted(id)}: ${row(devices, say)}.`,
  portsOfOneId: ({ id, device }, say) =>
    `Zwei Buchsen an ${say.place(device, 'dative')} haben die Kennung ${say.quoted(id)}.`,
  linksOfOneId: ({ id, links }, say) =>
    `Zwei Verbindungen haben die Kennung ${say.quoted(id)}: ${row(links, say)}.`,
  linkFromUnknownPort: ({ link, port, device }, say) =>
    `Verbindung ${say.quoted(link)} kommt von einer Buchse ${say.quoted(port)}, die es an ${say.place(device, 'dative')} nicht gibt.`,
  linkToUnknownPort: ({ link, port, device }, say) =>
    `Verbindung ${say.quoted(link)} geht zu einer Buchse ${say.quoted(port)}, die es an ${say.place(device, 'dative')} nicht gibt.`,
  linkFromUnknownDevice: ({ link, device }, say) =>
    `Verbindung ${say.quoted(link)} kommt von einem Gerät ${say.quoted(device)}, das nicht in der Kette ist.`,
  linkToUnknownDevice: ({ link, device }, say) =>
    `Verbindung ${say.quoted(link)} geht zu einem Gerät ${say.quoted(device)}, das nicht in der Kette ist.`,
  linkWrongWayRound: ({ link, from, to }, say) =>
    `Verbindung ${say.quoted(link)} läuft verkehrt herum, vom Eingang ${say.socket(from)} zum Ausgang ${say.socket(to)}; dreh sie um.`,
  linkBetweenInputs: ({ link, from, to }, say) =>
    `Verbindung ${say.quoted(link)} verbindet zwei Eingänge, ${say.socket(from)} und ${say.socket(to)}; ein Kabel läuft von einem Ausgang zu einem Eingang.`,
  linkBetweenOutputs: ({ link, from, to }, say) =>
    `Verbindung ${say.quoted(link)} verbindet zwei Ausgänge, ${say.socket(from)} und ${say.socket(to)}; ein Kabel läuft von einem Ausgang zu einem Eingang.`,
  portUsedTwice: ({ port, links }, say) =>
    `Die Verbindungen ${say.and(links.map(say.quoted))} stecken beide in ${say.place(port, 'dative')}.`,
  lengthNotPositive: ({ link, length }, say) =>
    `Bei ${say.place(link, 'dative')} ist die Länge ${say.metres(length)}; sie muss mehr als null sein.`,
  displayWithOutput: ({ display, output }, say) =>
    `${say.start(say.place(display))} hat einen Ausgang ${say.label(output)}; eine Kette endet an ihren Anzeigen.`,
  linkIntoItself: ({ link, device }, say) =>
    `Verbindung ${say.quoted(link)} führt von ${say.place(device, 'dative')} wieder dorthin zurück.`,
  signalLoop: ({ devices, link }, say) =>
    `Das Signal läuft im Kreis: ${[...devices, ...devices.slice(0, 1)].map((one) => say.place(one)).join(' → ')}. Verbindung ${say.quoted(link)} schließt ihn.`,
  deviceUnconnected: ({ device }, say) => `${say.start(say.place(device))} ist mit nichts verbunden.`,
  devicesWithoutSource: ({ devices }, say) =>
    `${say.start(row(devices, say))} sind miteinander verbunden, aber mit keiner Quelle.`,
  devicesWithoutDisplay: ({ devices }, say) =>
    `${say.start(row(devices, say))} sind miteinander verbunden, aber mit keiner Anzeige.`,
  devicesWithoutEither: ({ devices }, say) =>
    `${say.start(row(devices, say))} sind miteinander verbunden, aber mit keiner Quelle und keiner Anzeige.`,
};
