import type { ChangeWords } from './change-words.ts';

export const changesToPlaces = {
  otherChange: {
    label: 'Eine Änderung in eigenen Worten',
    order: (name) => `Mach eine Änderung in eigenen Worten: ${name()}`,
    instructions:
      'Beschreib, was du änderst, und ändere nur das. Sei so vorsichtig, wie der Ort es verlangt: Leitern, Laserlicht, Netzspannung, Kabel über Boden und in Wänden.',
    afterwards: 'Mach es rückgängig, außer es darf bleiben und der Fehler ist weg.',
  },
  ownKind: {
    label: 'Eine Änderung, die deine Firma ergänzt hat',
    order: (name) => `Mach die eigene Änderung deiner Firma: ${name()}`,
    instructions:
      'Mach es, wie deine Firma es festgelegt hat, und ändere nichts sonst. Sei so vorsichtig, wie der Ort es verlangt: Leitern, Laserlicht, Netzspannung, Kabel über Boden und in Wänden.',
    afterwards: 'Mach es rückgängig, außer es darf bleiben und der Fehler ist weg.',
  },
} satisfies Record<string, ChangeWords>;

/** Of a kind that the organisation has named itself. */
export const wordsOfOwnKind = (name: string): ChangeWords => ({
  ...changesToPlaces.ownKind,
  label: name,
  order: (place) => `${name}: ${place()}`,
});
