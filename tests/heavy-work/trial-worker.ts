import { runInThisContext } from 'node:vm';

/** A worker that runs whatever function it is sent as text, for trying how threads are ended. */
export const run = ({ input }: { input: string }): string =>
  JSON.stringify(runInThisContext(`(${JSON.parse(input)})()`));
