import type { Batch } from './bench.ts';
import { playFault, seedsFrom } from './play.ts';
import { keptApart, worlds } from './worlds.ts';

/** Plays the batches its parent sends, one at a time. */
process.on('message', ({ world, way, from, seeds }: Batch) => {
  const kind = [...worlds, ...keptApart].find(({ name }) => name === world);
  if (kind === undefined) throw new Error(`No world ${world}.`);
  process.send?.(seedsFrom(from, seeds).flatMap((seed) => playFault(kind, way, seed) ?? []));
});
