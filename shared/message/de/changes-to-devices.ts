import type { ChangeWords } from './change-words.ts';

export const changesToDevices = {
  otherSource: {
    label: 'Stattdessen eine andere Quelle abspielen',
    order: (name) => `Spiel stattdessen von ${name('dative')}`,
    instructions:
      'Lass jedes Kabel, wie es ist, und spiel diese Quelle mit Inhalt gleicher Art und gleichen Formats. Zeigt die Quelle selbst den Fehler, setz eine mitgebrachte an ihre Stelle, in dieselbe Buchse.',
    afterwards:
      'Wähl wieder die übliche Quelle; eine mitgebrachte kommt weg und die alte in dieselbe Buchse.',
  },
  sourceIntoProcessor: {
    label: 'Quelle direkt in den Prozessor stecken',
    order: (name) => `Steck direkt in den Prozessor: ${name()}`,
    instructions:
      'Nimm alles zwischen dieser Quelle und dem Prozessor heraus: ein Kabel von der Quelle zu einem Eingang des Prozessors, und diesen Eingang wählen. Der Ton kann solange fehlen.',
    afterwards: 'Steck die Quelle zurück und wähl wieder den alten Eingang.',
  },
  bypassDevice: {
    label: 'Gerät umgehen',
    order: (name) => `Umgeh ${name('accusative')}`,
    instructions:
      'Verbinde, was das Gerät speist, direkt mit dem, was folgt. Verlängerungen kommen zu zweit: nimm beide Enden heraus.',
    afterwards: 'Setz das Gerät wieder zwischen dieselben zwei Buchsen.',
  },
  disableProcessing: {
    label: 'Bildverarbeitung und EDID-Verwaltung abschalten',
    order: (name) => `Schalte an ${name('dative')} Bildverarbeitung und EDID-Verwaltung ab`,
    instructions:
      'Schalte Skalierung, Wandlung, Bildverarbeitung und EDID-Verwaltung in diesem Gerät ab, sodass es weitergibt, was es bekommt. Sag jede Einstellung an und lies sie vorher und nachher aus.',
    afterwards: 'Lass es ab, wenn der Fehler weg ist; sonst stell alles zurück.',
  },
  limitInputBandwidth: {
    label: 'Angebotene Eingangsbandbreite auf 9 Gbit/s begrenzen',
    order: (name) => `Begrenz den Eingang von ${name('dative')} auf 9 Gbit/s`,
    instructions:
      'Stell die angebotene Bandbreite des Eingangs auf 9 Gbit/s, dann starte dieses Gerät und die Quelle neu, damit die Quelle sie neu liest. Sag die Einstellung an.',
    afterwards: 'Stell auf automatisch zurück und starte beide neu.',
  },
  limitOutputBandwidth: {
    label: 'Ausgangsbandbreite auf 9 Gbit/s begrenzen',
    order: (name) => `Begrenz den Ausgang von ${name('dative')} auf 9 Gbit/s`,
    instructions:
      'Stell den Ausgang dieses Geräts auf höchstens 9 Gbit/s (niedrigere Rate, 8 Bit oder 4:2:0), damit das Kabel dahinter weniger trägt. Sag die Einstellung an.',
    afterwards: 'Stell den Ausgang zurück, meist auf automatisch.',
  },
  reissueHotPlug: {
    label: 'Hot-Plug neu auslösen',
    order: (name) => `Lös an ${name('dative')} Hot-Plug neu aus`,
    instructions:
      'Lass dieses Gerät seiner Quelle Hot-Plug neu melden, über sein Menü oder die Fernbedienung, ohne einen Stecker anzufassen, und merk dir, was geschieht. Das ist Auskunft, nie eine Reparatur.',
    afterwards: 'Nichts zurückzubauen: als zurückgebaut abschließen.',
  },
  moveProcessorToDisplay: {
    label: 'Prozessor neben die Anzeige stellen',
    order: (name) => `Stell neben die Anzeige: ${name()}`,
    instructions:
      'Stell den Prozessor neben die Anzeige und verbinde beide mit dem kurzen passiven Kabel. Nur zur Fehlersuche.',
    afterwards: 'Bring den Prozessor zurück und verbinde beide Strecken wie vorher.',
  },
  substituteDisplay: {
    label: 'Andere Anzeige anschließen',
    order: (name) => `Tausch ${name('accusative')} gegen eine andere Anzeige`,
    instructions:
      'Steck das Kabel zur Anzeige in eine andere. Eine Anzeige mit anderem Kopierschutz änderte zwei Dinge auf einmal.',
    afterwards: 'Steck das Kabel wieder in dieselbe Buchse der Anzeige.',
  },
  restoreSettings: {
    label: 'Frühere Einstellungen wiederherstellen',
    order: (name) => `Stell an ${name('dative')} frühere Einstellungen wieder her`,
    instructions:
      'Stell dieses Gerät ein wie zu der Zeit, als alles ging. Sag jede Einstellung an und lies sie vorher und nachher aus.',
    afterwards:
      'Die früheren Einstellungen dürfen bleiben. Müssen sie zurück, stell ein, was vorher ausgelesen wurde.',
  },
  updateFirmware: {
    label: 'Firmware aktualisieren',
    order: (name) => `Aktualisier die Firmware von ${name('dative')}`,
    instructions:
      'Schreib die Einstellungen auf, aktualisiere nach der Anleitung des Herstellers und stell ein, was das Update zurückgesetzt hat. Lies Firmware-Stand und Einstellungen vorher und nachher aus.',
    afterwards: 'Das lässt sich nicht rückgängig machen: behalten, was immer der Nachtest sagt.',
  },
} satisfies Record<string, ChangeWords>;
