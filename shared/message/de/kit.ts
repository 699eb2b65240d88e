import type { kitCodes } from '../codes/kit.ts';
import type { Sentences } from '../sentences.ts';

export const kitDe: Sentences<typeof kitCodes> = {
  kitCable: ({ lengthM, category }, say) => `ein Kabel von ${say.metres(lengthM)}, ${say.category(category)}`,
  kitOpticalCable: ({ lengthM, category }, say) =>
    `ein aktives optisches Kabel von ${say.metres(lengthM)}, ${say.category(category)}, mit Enden aus der Fabrik`,
  kitActiveCopperCable: ({ lengthM, category }, say) =>
    `ein aktives Kupferkabel von ${say.metres(lengthM)}, ${say.category(category)}`,
  kitCertifiedCable: ({ lengthM }, say) => `ein zertifiziertes Kabel von ${say.metres(lengthM)}`,
  kitCoupler: () => 'eine Kupplung, die die volle Rate durchlässt',
  kitSyncSwitch: () => 'ein Umschalter, der den Takt erneuert',
  kitDisplay: () => 'eine Testanzeige mit demselben Kopierschutz',
  kitSource: () => 'eine zweite Quelle, die sicher gut ist',
  kitPowerSupply: () => 'ein Netzteil, das zum Gerät passt und das der Hersteller zulässt',
  kitExtenderPair: () => 'ein Paar Verlängerungen über verdrillte Paare, die sicher gut sind',
};
