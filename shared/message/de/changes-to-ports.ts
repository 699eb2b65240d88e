import type { ChangeWords } from './change-words.ts';

export const changesToPorts = {
  movePort: {
    label: 'An eine andere Buchse umstecken',
    order: (name) => `Steck an eine andere Buchse um: ${name()}`,
    instructions:
      'Steck diesen Stecker in eine freie Buchse desselben Geräts, gleicher Richtung, mit gleichen Fähigkeiten und Einstellungen, und wähl sie.',
    afterwards: 'Lass ihn dort, wenn der Fehler weg ist; sonst steck ihn zurück.',
  },
  raisePortMode: {
    label: 'Betriebsart der Buchse anheben',
    order: (name) => `Heb die Betriebsart an: ${name()}`,
    instructions:
      'Stell diese Buchse auf die höchste Betriebsart, die sie hat. Sag die Einstellung an und lies die Einstellungen vorher und nachher aus.',
    afterwards: 'Die höchste Betriebsart darf bleiben. Muss sie zurück, stell ein, was vorher war.',
  },
} satisfies Record<string, ChangeWords>;
