import { number } from '../words/times.ts';

/** A size in bytes as people read it: `85 B`, `640 kB`, `2.4 MB` (powers of ten, as ISO 80000-13 has them). */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${number(bytes)} B`;
  return bytes < 1_000_000 ? `${number(bytes / 1000)} kB` : `${number(bytes / 1_000_000, 1)} MB`;
}
