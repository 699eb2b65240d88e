import { type KitItem, kitText } from '../../../shared/isolation/kit.ts';
import { language } from './language.ts';
import { number } from './times.ts';

const german = {
  coupler: 'eine Kupplung, die die volle Rate durchlässt',
  syncSwitch: 'ein Umschalter, der den Takt erneuert',
  display: 'eine Testanzeige mit demselben Kopierschutz',
  source: 'eine zweite Quelle, die sicher gut ist',
  extenderPair: 'ein Paar Verlängerungen über verdrillte Paare, die sicher gut sind',
} as const;
const germanCategories = {
  standard: 'Standard',
  highSpeed: 'High Speed',
  premiumHighSpeed: 'Premium High Speed (18 Gbit/s)',
  ultraHighSpeed: 'Ultra High Speed (48 Gbit/s)',
  unknown: 'zertifiziert',
} as const;

/** Something to have at hand, in the language of the screens: `a 12.5 m Premium High Speed (18 Gbit/s) cable`. */
export function kitItemWords(item: KitItem): string {
  if (language.value === 'en') return kitText(item);
  return item.kind === 'cable'
    ? `ein ${number(item.lengthM, 1)}-m-Kabel, ${germanCategories[item.category]}`
    : german[item.kind];
}
