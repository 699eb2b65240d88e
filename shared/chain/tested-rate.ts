import type { Link } from '../contract/chain.ts';

/**
 * Gross bit rate that cables of a category are tested for, Gbit/s: 74.25 MHz, 340 MHz, 18 and 48 Gbit/s.
 * Source: the cable categories of the HDMI compliance programme (from memory).
 */
export const testedForGbps: Record<Link['category'], number | null> = {
  standard: 2.2275,
  highSpeed: 10.2,
  premiumHighSpeed: 18,
  ultraHighSpeed: 48,
  unknown: null,
};

/** Whether cables of a category bear a certification label that can be looked for. */
export const hasLabel = (category: Link['category']): boolean =>
  category === 'premiumHighSpeed' || category === 'ultraHighSpeed';
