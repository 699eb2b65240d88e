import { plural, wordsOf } from '../words/language.ts';

export const drawingWords = wordsOf({
  en: {
    drawing: (name: string, devices: number, links: number) =>
      `Chain ${name}: ${plural('en', devices, '1 device', `${devices} devices`)}, ${plural('en', links, '1 cable', `${links} cables`)}`,
    larger: 'Larger',
    smaller: 'Smaller',
    whole: 'Show all',
    drawingNow: 'Drawing',
    link: (id: string, { from, to }: { from: string; to: string }, metres: string) =>
      `Cable ${id}, ${metres} m, from ${from} to ${to}`,
    marks: { suspect: 'still suspect', change: 'change under test', culprit: 'the cause' },
    legend: 'Signs',
  },
  de: {
    drawing: (name, devices, links) =>
      `Kette ${name}: ${plural('de', devices, '1 Gerät', `${devices} Geräte`)}, ${plural('de', links, '1 Kabel', `${links} Kabel`)}`,
    larger: 'Größer',
    smaller: 'Kleiner',
    whole: 'Alles zeigen',
    drawingNow: 'Zeichnet',
    link: (id, { from, to }, metres) => `Kabel ${id}, ${metres} m, von ${from} nach ${to}`,
    marks: { suspect: 'noch verdächtig', change: 'geprüfte Änderung', culprit: 'die Ursache' },
    legend: 'Zeichen',
  },
});
