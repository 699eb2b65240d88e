import type { Lane } from './lanes.ts';

/**
 * What a worker thread can be asked to do. Input and output go over as JSON: plain data, and nothing that only this
 * thread has. Tasks stand in files named `*.work.ts`, which `src/heavy-worker.ts` lists.
 */
export type HeavyTask<Input, Output> = {
  readonly name: string;
  readonly lane: Lane;
  run(input: Input): Output | Promise<Output>;
};

/** @param name told apart from every other task's */
export const heavyTask = <Input, Output>(
  name: string,
  lane: Lane,
  run: (input: Input) => Output | Promise<Output>,
): HeavyTask<Input, Output> => ({ name, lane, run });

/** What goes over to a worker thread; it gives the output back as JSON. */
export type Order = { readonly name: string; readonly input: string };
