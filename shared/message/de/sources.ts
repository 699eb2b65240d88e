import type { sourceCodes } from '../codes/sources.ts';
import type { Sentences } from '../sentences.ts';

export const sourcesDe: Sentences<typeof sourceCodes> = {
  commonPractice: () => 'übliche Praxis, ohne Quelle',
  levelOfOrganisation: () => 'Stand, den der Betrieb festlegt',
  cableCategories: () =>
    'Kabelkategorien des HDMI-Prüfprogramms (aus dem Gedächtnis); welche zu verlangen ist: übliche Praxis',
  computedCapacity: () =>
    'berechnet: Zeichenraten von HDMI und Kapazität der Verbindung mit fester Rate; was angenommen ist, steht dabei',
  standardFromMemory: ({ standard, clause }) => `${standard}, Abschnitt ${clause} (aus dem Gedächtnis)`,
  streamTypeFromMemory: () => 'HDCP 2.2 auf HDMI, Stream-Typ (aus dem Gedächtnis)',
};
