import type pg from 'pg';

/**
 * Sends a client's statements one after the other. Prisma asks for the parts of a joined read side by side on the one
 * connection of a transaction; node-postgres would queue them too, but warns of it and will cease to.
 * Statements with a callback or a listener of their own, which no part of Prisma sends, go past.
 */
export function sendOneAtATime(client: pg.ClientBase): void {
  const send = client.query.bind(client) as (...args: unknown[]) => unknown;
  let last: Promise<unknown> = Promise.resolve();
  const query = (...args: unknown[]): unknown => {
    if (typeof args.at(-1) === 'function' || isSubmittable(args[0])) return send(...args);
    const answer = last.then(() => send(...args));
    last = answer.catch(() => undefined);
    return answer;
  };
  client.query = query as typeof client.query;
}

const isSubmittable = (query: unknown): boolean =>
  typeof query === 'object' && query !== null && 'submit' in query;
