/** The parts of jStat (general-purpose statistics library) that the outside checks call; it ships no types. */
declare module 'jstat' {
  export const jStat: {
    binomial: { cdf(k: number, n: number, p: number): number };
    beta: { cdf(x: number, alpha: number, beta: number): number };
    hypgeom: { cdf(x: number, populationSize: number, successes: number, draws: number): number };
    chisquare: { cdf(x: number, degrees: number): number };
    factorialln(n: number): number;
  };
}
