import type { ChangeWords } from './change-words.ts';

export const changesOfSettings = {
  otherTitle: {
    label: 'Einen anderen Titel abspielen',
    order: (name) => `Spiel einen anderen Titel von ${name('dative')}`,
    instructions:
      'Lass Quelle, Anwendung und Einstellungen, wie sie sind, und spiel einen anderen Titel im gleichen Format: Auflösung, Rate und HDR.',
    afterwards: 'Spiel wieder den üblichen Titel.',
  },
  otherApplication: {
    label: 'Eine andere Anwendung benutzen',
    order: (name) => `Benutz eine andere Anwendung an ${name('dative')}`,
    instructions:
      'Lass Quelle und Einstellungen, wie sie sind, und spiel Inhalt gleichen Formats aus einer anderen Anwendung oder von einem anderen Laufwerk der Quelle.',
    afterwards: 'Geh zur üblichen Anwendung zurück.',
  },
  otherOutputSetting: {
    label: 'Eine Ausgabeeinstellung der Quelle ändern',
    order: (name) => `Ändere eine Ausgabeeinstellung an ${name('dative')}`,
    instructions:
      'Schreib die Einstellungen auf, dann stell eine davon anders: was mit HDR geschieht, Farbformat, Farbtiefe oder Anpassung an den Inhalt. Sag die Einstellung an und lies die Einstellungen vorher und nachher aus.',
    afterwards: 'Lass es so, wenn der Fehler weg ist; sonst stell ein, was vorher war.',
  },
  lowerRate: {
    label: 'Rate senken',
    order: (name) => `Senk die Rate, die aus ${name('dative')} kommt`,
    instructions:
      'Lass das Gerät weniger senden: niedrigere Auflösung oder Bildrate, 8 Bit oder 4:2:0. Sag die Einstellung an.',
    afterwards: 'Stell die Rate auf das, was sie war.',
  },
  raiseRate: {
    label: 'Rate anheben',
    order: (name) => `Heb die Rate an, die aus ${name('dative')} kommt`,
    instructions:
      'Lass das Gerät das Höchste senden, was die Kette tragen soll: die höchste Bildrate, Farbtiefe und HDR, wie gewünscht. Ein Bild, das dann öfter ausfällt oder wegbleibt, zeigt eine Strecke mit zu wenig Reserve. Sag die Einstellung an; wisse, wie du ohne Bild zurückstellst.',
    afterwards: 'Lass es so, wenn der Fehler weg ist; sonst stell die Rate auf das, was sie war.',
  },
  controlBusOff: {
    label: 'Steuerbus abschalten',
    order: (name) => `Schalte an ${name('dative')} den Steuerbus ab`,
    instructions:
      'Schalte im Menü dieses Geräts ab, dass Geräte einander über das Kabel steuern. Ton, der von der Anzeige zurückkommt, kann damit wegfallen. Sag die Einstellung an.',
    afterwards:
      'Lass ihn ab, wenn der Fehler weg ist und niemand ihn vermisst; sonst schalte ihn wieder ein.',
  },
} satisfies Record<string, ChangeWords>;
