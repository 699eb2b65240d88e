import type { ChangeWords } from './change-words.ts';

export const changesOfPower = {
  powerCycle: {
    label: 'Gerät aus- und einschalten',
    order: (name) => `Schalte aus und wieder ein: ${name()}`,
    instructions:
      'Schalte nur dieses Gerät am Netzschalter oder Stecker aus, warte eine Minute und schalte es wieder ein. Bereitschaft genügt nicht. Fass kein anderes Gerät an.',
    afterwards:
      'Nichts zurückzubauen. Ist der Fehler weg, warte, ob er wiederkommt: Ein Neustart hilft dem, was hängt, bis es wieder hängt.',
  },
  otherOutlet: {
    label: 'Aus einer anderen Steckdose speisen',
    order: (name) => `Speis aus einer anderen Steckdose: ${name()}`,
    instructions:
      'Zieh den Netzstecker dieses Geräts und steck ihn in eine andere geerdete Steckdose, fern von Dimmern und Motoren, ohne Adapter.',
    afterwards:
      'Lass ihn dort, wenn der Fehler weg ist und die Leitung sicher liegt; sonst steck ihn zurück.',
  },
  otherSupply: {
    label: 'Anderes Netzteil benutzen',
    order: (name) => `Nimm ein anderes Netzteil für ${name('accusative')}`,
    instructions:
      'Setz ein Netzteil, das der Hersteller zulässt, an die Stelle des vorhandenen; beide sind solange vom Netz.',
    afterwards: 'Lass es, wenn der Fehler weg ist; sonst kommt das alte zurück.',
  },
  clearVents: {
    label: 'Lüftung freimachen',
    order: (name) => `Mach die Lüftung frei an ${name('dative')}`,
    instructions:
      'Nimm weg, was seine Lüftung verdeckt, gib ihm den Abstand, den der Hersteller verlangt, entfern Staub von außen, und lass es abkühlen, bevor du beobachtest.',
    afterwards: 'Nichts zurückzubauen.',
  },
  warmByUse: {
    label: 'Durch normalen Gebrauch erwärmen',
    order: (name) => `Erwärm durch normalen Gebrauch: ${name()}`,
    instructions:
      'Spiel etwa eine Stunde wie üblich, Türen und Abdeckungen so, wie sie sonst sind, und sieh, ob der Fehler kommt, sobald es warm ist.',
    afterwards: 'Nichts zurückzubauen: Sag, ob der Fehler kam, sobald es warm war.',
  },
} satisfies Record<string, ChangeWords>;
