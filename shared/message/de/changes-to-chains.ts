import type { ChangeWords } from './change-words.ts';

export const changesToChains = {
  mainsOffForAll: {
    label: 'Netz für alle aus, der Reihe nach ein',
    order: (name) => `Netz für alle aus und der Reihe nach ein: ${name()}`,
    instructions:
      'Schalte jedes Gerät der Kette am Schalter oder Stecker aus und lass alle eine Minute aus. Dann schalte eines nach dem anderen ein, jedes, sobald das davor bereit ist: Anzeige, Prozessor, Receiver, Quellen.',
    afterwards: 'Nichts zurückzubauen. Ist der Fehler weg, hat etwas gehangen: Was, ist damit nicht gesagt.',
  },
  otherWakeOrder: {
    label: 'Geräte in anderer Reihenfolge wecken',
    order: (name) => `Weck die Geräte in anderer Reihenfolge: ${name()}`,
    instructions:
      'Weck aus der Bereitschaft ein Gerät nach dem anderen mit seiner eigenen Fernbedienung, jedes, sobald das davor bereit ist: Anzeige, Prozessor, Receiver, Quelle. Mach so viele Starts wie vorher.',
    afterwards: 'Ist der Fehler weg, darf so gestartet werden; sonst starte wieder wie üblich.',
  },
  ownRemotes: {
    label: 'Eigene Fernbedienungen benutzen',
    order: (name) => `Nimm eigene Fernbedienungen statt der Steuerung: ${name()}`,
    instructions:
      'Tu Schritt für Schritt mit den eigenen Fernbedienungen, was die Taste der Steuerung tut, so oft wie vorher.',
    afterwards: 'Ist der Fehler weg, darf es so bleiben; sonst benutz wieder die Steuerung.',
  },
  disconnectDisturber: {
    label: 'Abschalten oder wegrücken, was stören kann',
    order: (name) => `Schalte ab oder rück weg, was stören kann: ${name()}`,
    instructions:
      'Schalte ein Ding aus, zieh seinen Stecker oder rück es weg, das stören kann: ein Haushaltsgerät, ein Funkgerät, einen Dimmer, ein Ladegerät. Eines nach dem anderen, und schreib auf, welches.',
    afterwards: 'Lass es weg, wenn der Fehler weg ist und der Kunde zustimmt; sonst stell es zurück.',
  },
  unplugAerial: {
    label: 'Antennen- oder Satellitenleitung abziehen',
    order: (name) => `Zieh eine Antennen- oder Satellitenleitung ab: ${name()}`,
    instructions:
      'Zieh eine Antennen- oder Satellitenleitung an dem Gerät ab, das sie speist, und spiel von einer anderen Quelle. Sind es mehrere, eine nach der anderen, und schreib auf, welche.',
    afterwards: 'Steck die Leitung wieder in dieselbe Buchse.',
  },
  unplugNetwork: {
    label: 'Netzwerkleitung abziehen',
    order: (name) => `Zieh eine Netzwerkleitung ab: ${name()}`,
    instructions:
      'Zieh die Netzwerkleitung eines Geräts der Kette ab, und spiel, was kein Netzwerk braucht. Ein Gerät nach dem anderen, und schreib auf, welches.',
    afterwards: 'Steck die Leitung wieder in dieselbe Buchse.',
  },
  oneSocketCircuit: {
    label: 'Alles aus einem Stromkreis speisen',
    order: (name) => `Speis alles aus einem Stromkreis: ${name()}`,
    instructions:
      'Speis jedes Gerät der Kette aus geerdeten Steckdosen eines Stromkreises, wenn Sicherung und Leiste die Last tragen. Steck eines nach dem anderen um; nichts, was geerdet war, verliert die Erde.',
    afterwards: 'Lass es, wenn der Fehler weg ist und die Leitungen sicher liegen; sonst steck alles zurück.',
  },
} satisfies Record<string, ChangeWords>;
