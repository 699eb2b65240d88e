import { needed, percentage, watched } from '../message/figures.ts';

/** How figures are put into sentences that are no messages yet. */

export const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);

/** Minutes that were watched: a decimal below ten, whole above. */
export const minutesWatched = (minutes: number): string => `${watched(minutes)} min`;

/** Minutes that are still to be watched, rounded up so that the text never asks for too little. */
export const minutesNeeded = (minutes: number): string => `${needed(minutes)} min`;

/** A probability as a percentage that never rounds to a plain 0 or 100. */
export const percent = (probability: number): string =>
  percentage(probability, { lessThan: 'less than', moreThan: 'more than', decimal: (figure) => figure });
