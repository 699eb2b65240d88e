import { Agent, request } from 'node:http';

/** Answers a second, and how long they took. */
export type Pace = { readonly perS: number; readonly p50Ms: number; readonly p99Ms: number };

export type Asked = {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
};

/**
 * So many clients, each asking again as soon as it is answered, over connections that stay.
 * @param next what a client asks for, by its number
 * @throws when an answer is not a success
 */
export async function pace(
  base: string,
  { clients, forMs }: { readonly clients: number; readonly forMs: number },
  next: (client: number) => Asked,
): Promise<Pace> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const times: number[] = [];
  const until = performance.now() + forMs;
  const one = async (client: number): Promise<void> => {
    while (performance.now() < until) {
      const begun = performance.now();
      await answered(base, agent, next(client));
      times.push(performance.now() - begun);
    }
  };
  await Promise.all(Array.from({ length: clients }, (_, client) => one(client)));
  agent.destroy();
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(sorted.length * share)] ?? 0;
  return { perS: times.length / (forMs / 1000), p50Ms: at(0.5), p99Ms: at(0.99) };
}

const answered = (base: string, agent: Agent, { path, method, headers, body }: Asked): Promise<void> =>
  new Promise((resolve, reject) => {
    const asking = request(new URL(path, base), { method, headers, agent }, (answer) => {
      const isFine = (answer.statusCode ?? 500) < 300;
      let text = '';
      answer.on('data', (part) => {
        if (!isFine) text += part;
      });
      answer.on('end', () => (isFine ? resolve() : reject(new Error(`${method} ${path}: ${text}`))));
    });
    asking.on('error', reject);
    asking.end(body);
  });
