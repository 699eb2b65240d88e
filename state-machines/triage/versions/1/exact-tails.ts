/**
 * Exact tails of the discrete distributions that retests rest on, summed term by term in logarithms.
 * Counts are whole numbers of at least 0; probabilities are 0..1. Callers check their input.
 */

const smallestForSeries = 24;
const smallOnes = lnFactorialsBelow(smallestForSeries);

/**
 * Natural logarithm of n!. Below 24 by summing logarithms, from there by Stirling's series to 1/n^9, whose error at
 * 24 is under 1e-15. Source: Abramowitz and Stegun 1964, 6.1.41.
 */
export function lnFactorial(n: number): number {
  const small = smallOnes[n];
  if (small !== undefined) return small;
  const inverse = 1 / n;
  const square = inverse * inverse;
  const series =
    inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188))));
  return n * Math.log(n) - n + 0.5 * Math.log(2 * Math.PI * n) + series;
}

function lnFactorialsBelow(limit: number): number[] {
  const found = [0];
  for (let n = 1; n < limit; n += 1) found.push((found[n - 1] ?? 0) + Math.log(n));
  return found;
}

/** Natural logarithm of "n choose k"; minus infinity where there is no such choice. */
export function lnChoose(n: number, k: number): number {
  if (k < 0 || k > n) return Number.NEGATIVE_INFINITY;
  return lnFactorial(n) - lnFactorial(k) - lnFactorial(n - k);
}

function clampProbability(value: number): number {
  return Math.min(1, Math.max(0, value));
}

/** P(X <= k) for X binomial with n trials of probability p. */
export function binomialLowerTail(k: number, n: number, p: number): number {
  if (k >= n || p <= 0) return 1;
  if (p >= 1) return 0;
  let sum = 0;
  for (let x = 0; x <= k; x += 1) {
    sum += Math.exp(lnChoose(n, x) + x * Math.log(p) + (n - x) * Math.log1p(-p));
  }
  return clampProbability(sum);
}

/**
 * P(X <= k) for X hypergeometric: the failures among `drawn` tries, where `failures` of `total` tries failed.
 * The one-sided tail of Fisher's exact test (Fisher 1935).
 */
export function hypergeometricLowerTail(k: number, failures: number, drawn: number, total: number): number {
  const lowest = Math.max(0, failures + drawn - total);
  const highest = Math.min(k, failures, drawn);
  const whole = lnChoose(total, drawn);
  let sum = 0;
  for (let x = lowest; x <= highest; x += 1) {
    sum += Math.exp(lnChoose(failures, x) + lnChoose(total - failures, drawn - x) - whole);
  }
  return clampProbability(sum);
}

/**
 * P(X > x) for X chi-squared with an even number of degrees of freedom, where it is a finite Poisson sum.
 * Source: Abramowitz and Stegun 1964, 26.4.21.
 */
export function chiSquaredUpperTailEven(x: number, degrees: number): number {
  let term = Math.exp(-x / 2);
  let sum = term;
  for (let j = 1; j < degrees / 2; j += 1) {
    term *= x / 2 / j;
    sum += term;
  }
  return clampProbability(sum);
}
