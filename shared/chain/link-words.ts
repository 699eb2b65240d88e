import type { Link } from '../contract/chain.ts';

/** How the facts of a cable are put into sentences. */

export const metres = (lengthM: number): string => `${lengthM} m`;

export const constructionNames: Record<Link['construction'], string> = {
  passiveCopper: 'passive copper',
  activeCopper: 'active copper',
  activeOptical: 'active optical',
  twistedPairExtender: 'twisted-pair extender',
};
export const categoryNames: Record<Link['category'], string> = {
  standard: 'Standard',
  highSpeed: 'High Speed',
  premiumHighSpeed: 'Premium High Speed',
  ultraHighSpeed: 'Ultra High Speed',
  unknown: 'category not known',
};
