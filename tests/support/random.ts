/** A repeatable stream of numbers in 0..1: mulberry32, public domain. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A seed that the same text always gives. */
export const seedOf = (text: string, start = 7): number =>
  [...text].reduce((hash, letter) => Math.imul(hash, 31) + (letter.codePointAt(0) ?? 0), start);

export function pick(weights: readonly number[], random: () => number): number {
  let left = random() * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [at, weight] of weights.entries()) {
    left -= weight;
    if (left < 0) return at;
  }
  return weights.length - 1;
}
