import type { ChangeWords } from './change-words.ts';

export const changesToLinks = {
  reseat: {
    label: 'Beide Stecker neu stecken',
    order: (name) => `Steck die Stecker neu an ${name('dative')}`,
    instructions:
      'Schalte beide Geräte in Bereitschaft. Zieh den Stecker an jedem Ende, such nach verbogenen Kontakten und Schmutz, und steck ihn ganz ein. Fass kein anderes Kabel an.',
    afterwards: 'Nichts zurückzubauen.',
  },
  flexCable: {
    label: 'Kabel von Hand biegen',
    order: (name) => `Bieg von Hand: ${name()}`,
    instructions:
      'Bieg das Kabel bei laufendem Bild sacht hin und her, nahe jedem Stecker und auf seiner Länge, an jedem Ende eine Minute, und achte darauf, ob der Fehler kommt. Die Stecker sitzen danach auch neu.',
    afterwards: 'Nichts zurückzubauen: Sag, ob der Fehler beim Biegen kam.',
  },
  replaceCable: {
    label: 'Kabel ersetzen',
    order: (name) => `Ersetz ${name('accusative')}`,
    instructions:
      'Steck ein Kabel, das sicher gut ist, in dieselben zwei Buchsen. Ein gerichtetes Kabel kommt mit dem Quellenende an die Quelle; versorg es mit Strom, wo der Hersteller das verlangt. Zeichne das alte Kabel und heb es auf.',
    afterwards: 'Behalte das neue Kabel, wenn der Fehler weg ist; sonst kommt das alte zurück.',
  },
  temporaryCable: {
    label: 'Kabel vorübergehend über den Boden legen',
    order: (name) => `Leg vorübergehend ein Kabel als Ersatz für ${name('accusative')}`,
    instructions:
      'Leg ein Kabel, das sicher gut ist, offen von Buchse zu Buchse, und lass das feste Kabel liegen, beide Stecker gezogen.',
    afterwards: 'Nimm das Kabel auf und steck das feste wieder in dieselben zwei Buchsen.',
  },
  removeCoupler: {
    label: 'Kupplung, Wanddose oder Adapter umgehen',
    order: (name) => `Umgeh Kupplung, Wanddose oder Adapter: ${name()}`,
    instructions:
      'Wo dieses Kabel durch eine Kupplung, eine Wanddose oder einen Adapter läuft, verbinde beide Buchsen stattdessen mit einem Kabel aus einem Stück, offen gelegt. Was in der Wand liegt, bleibt, die Stecker gezogen.',
    afterwards:
      'Lass es, wenn der Fehler weg ist und das Kabel sicher liegt; sonst verbinde alles wie vorher.',
  },
  unplugBranch: {
    label: 'Parallelen Zweig abziehen',
    order: (name) => `Zieh den Zweig ab: ${name()}`,
    instructions:
      'Zieh den Stecker dieses Zweigs an dem Gerät, das ihn speist. Eine Anzeige in Bereitschaft wirkt mit, solange sie steckt.',
    afterwards: 'Steck den Zweig wieder in dieselbe Buchse.',
  },
  insertSyncSwitch: {
    label: 'Umschalter einsetzen, der den Takt erneuert',
    order: (name) => `Setz in ${name('accusative')} einen Umschalter ein, der den Takt erneuert`,
    instructions:
      'Setz den Umschalter in diese Verbindung, am Ende näher zur Anzeige, mit abgeschalteter Skalierung und eigenem EDID.',
    afterwards: 'Er darf bleiben, wenn der Fehler weg ist; sonst nimm ihn heraus und verbinde wie vorher.',
  },
} satisfies Record<string, ChangeWords>;
