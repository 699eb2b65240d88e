import type { phoneCodes } from '../codes/phone.ts';
import type { Sentences } from '../sentences.ts';

export const phoneDe: Sentences<typeof phoneCodes> = {
  phoneOutOfReach: () => 'An den Schalter kommt der Kunde nicht heran.',
  phonePullsPlugs: () => 'Dafür müssten Stecker gezogen werden, und niemand dort sieht, welche.',
  phoneTakesSight: () => 'Zurück geht es nur im Menü: Ist das Bild weg, sieht der Kunde es nicht.',
  phoneAtMains: () => 'Das ist Arbeit an Netzsteckern.',
  phoneTakesKit: () => 'Dafür braucht es Dinge, die ein Kunde nicht hat.',
  phoneCantBeUndone: () => 'Das lässt sich nicht rückgängig machen.',
  phoneTakesTechnician: () => 'Das ist Sache eines Technikers.',
};
