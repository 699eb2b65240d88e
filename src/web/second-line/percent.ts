import { number } from '../words/times.ts';

/** A chance (0..1) as a percentage that never reads as a plain 0 or 100 where it is neither. */
export function percent(chance: number): string {
  if (chance > 0 && chance < 0.001) return `< ${number(0.1, 1)} %`;
  if (chance < 1 && chance > 0.999) return `> ${number(99.9, 1)} %`;
  return `${number(chance * 100, 1)} %`;
}
