import type { z } from 'zod';
import type { LanguageTag } from '../../shared/contract/language-names.ts';
import { type SpokenReply, spokenReply } from '../replies/spoken.ts';
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

/** A task whose output is a reply: it comes back as it leaves, for putting a long one into words takes as long as making it. */
export type ReplyTask<Input, Body> = HeavyTask<Said<Input>, SpokenReply> & { readonly body?: Body };
type Said<Input> = { readonly input: Input; readonly language: LanguageTag };

/** @param form of the reply, as its route describes it */
export const replyTask = <Input, Body>(
  name: string,
  form: z.ZodType<Body>,
  run: (input: Input) => Body | Promise<Body>,
): ReplyTask<Input, Body> =>
  heavyTask(name, 'plans', async ({ input, language }) => spokenReply(form, await run(input), language));

/** What goes over to a worker thread; it gives the output back as JSON. */
export type Order = { readonly name: string; readonly input: string };
