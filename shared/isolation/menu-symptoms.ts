import type { Symptom } from '../contract/triage.ts';

/** Symptoms in which a menu tells one side from the other: what the picture loses or shows, the menu can too. */
export const menuTells: readonly Symptom['kind'][] = [
  'noPicture',
  'dropOuts',
  'sparkles',
  'wrongColour',
  'soundOnly',
];

/**
 * Symptoms that lie over the picture and don't take it away: a device draws its menu on what it receives, so a clean
 * menu over a bad picture points upstream, and one that is hit too points downstream, whatever this device does with
 * its menu when its input goes. Common practice, no source.
 */
const overThePicture: readonly Symptom['kind'][] = ['sparkles', 'wrongColour'];
export const liesOverPicture = ({ kind }: Pick<Symptom, 'kind'>): boolean => overThePicture.includes(kind);
