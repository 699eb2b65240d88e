import { plural, wordsOf } from '../words/language.ts';

export const drawingWords = wordsOf({
  en: {
    drawing: (name: string, devices: number, links: number) =>
      `Chain ${name}: ${plural('en', devices, '1 device', `${devices} devices`)}, ${plural('en', links, '1 cable', `${links} cables`)}`,
    larger: 'Larger',
    smaller: 'Smaller',
    whole: 'Whole chain',
    keys: 'Drawing: + and − change its size, arrow keys move it, 0 shows all of it',
    devices: (count: number) => plural('en', count, '1 device', `${count} devices`),
    openBranch: (count: number) => `Open a branch of ${plural('en', count, '1 device', `${count} devices`)}`,
    drawingNow: 'Drawing',
    link: (id: string, { from, to }: { from: string; to: string }, metres: string) =>
      `Cable ${id}, ${metres} m, from ${from} to ${to}`,
    marks: {
      goal: 'can go here',
      fault: 'can’t be so',
      suspect: 'still suspect',
      change: 'change under test',
      culprit: 'the cause',
      next: 'next step',
      wrong: 'signal read: wrong',
      right: 'signal read: right',
      differs: 'not as found',
      evidence: 'photo or file',
    },
    legend: 'Signs',
  },
  de: {
    drawing: (name, devices, links) =>
      `Kette ${name}: ${plural('de', devices, '1 Gerät', `${devices} Geräte`)}, ${plural('de', links, '1 Kabel', `${links} Kabel`)}`,
    larger: 'Größer',
    smaller: 'Kleiner',
    whole: 'Ganze Kette',
    keys: 'Zeichnung: + und − ändern ihre Größe, Pfeiltasten bewegen sie, 0 zeigt sie ganz',
    devices: (count) => plural('de', count, '1 Gerät', `${count} Geräte`),
    openBranch: (count) => `Einen Zweig mit ${plural('de', count, '1 Gerät', `${count} Geräten`)} öffnen`,
    drawingNow: 'Zeichnet',
    link: (id, { from, to }, metres) => `Kabel ${id}, ${metres} m, von ${from} nach ${to}`,
    marks: {
      goal: 'passt hierhin',
      fault: 'geht so nicht',
      suspect: 'noch verdächtig',
      change: 'geprüfte Änderung',
      culprit: 'die Ursache',
      next: 'nächster Schritt',
      wrong: 'Signal gelesen: falsch',
      right: 'Signal gelesen: richtig',
      differs: 'nicht wie vorgefunden',
      evidence: 'Foto oder Datei',
    },
    legend: 'Zeichen',
  },
});
