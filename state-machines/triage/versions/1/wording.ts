/** How version 1 put figures into sentences. */

export function times(count: number): string {
  return count === 1 ? 'once' : `${count} times`;
}

/** Minutes that were watched: a decimal below ten, whole above. */
export function minutesWatched(minutes: number): string {
  return minutes < 10 ? `${Math.round(minutes * 10) / 10} min` : `${Math.round(minutes)} min`;
}

/** Minutes that are still to be watched, rounded up so that the text never asks for too little. */
export function minutesNeeded(minutes: number): string {
  return minutes < 10 ? `${Math.ceil(minutes * 10 - 1e-9) / 10} min` : `${Math.ceil(minutes - 1e-9)} min`;
}

/** A probability as a percentage that never rounds to a plain 0 or 100. */
export function percent(probability: number): string {
  const value = probability * 100;
  if (value > 0 && value < 0.1) return 'less than 0.1 %';
  if (value < 100 && value > 99.9) return 'more than 99.9 %';
  const isFine = value < 10 || value > 99;
  return `${isFine ? Math.round(value * 10) / 10 : Math.round(value)} %`;
}
