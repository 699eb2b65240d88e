/** One line of a benchmark's table: what was measured, what stands beside it, and the ratio of the two. */
export type BenchRow = { name: string; value: string; baseline: string; ratio: string };
