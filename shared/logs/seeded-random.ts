/**
 * The generator xoshiro128** 1.1. Source: Blackman and Vigna 2021, Scrambled linear pseudorandom number generators,
 * ACM Transactions on Mathematical Software 47(4), and their reference code.
 *
 * @param state four whole numbers of 32 bits, not all 0
 * @returns a function that gives the next whole number of 0..2^32-1
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotated(d, 11);
    return result;
  };
}

/** Numbers of 0 up to 1 that are the same for the same whole `seed` and look like chance. */
export function seededRandom(seed: number): () => number {
  const next = xoshiro128([seed | 0, 0x9e3779b9, 0x243f6a88, 0xb7e15162]);
  // Seeds that differ in one bit take some turns to part.
  for (let turn = 0; turn < 32; turn += 1) next();
  return () => next() / 2 ** 32;
}

function rotated(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits));
}
