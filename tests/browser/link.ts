import { once } from 'node:events';
import { connect, createServer, type Socket } from 'node:net';

/** The line between the browsers and the server, which can break. */
export type Link = {
  readonly port: number;
  /** Breaks each of the next so many connections, once it has carried that many bytes to the server. */
  breakNext(times: number, afterBytes: number): void;
  /** How often it broke so far. */
  breaks(): number;
  close(): void;
};

export async function openLink(serverPort: number): Promise<Link> {
  let left = 0;
  let limit = Number.POSITIVE_INFINITY;
  let broken = 0;
  const open = new Set<Socket>();
  const line = createServer((browser) => {
    const server = connect(serverPort, '127.0.0.1');
    let carried = 0;
    const end = () => {
      browser.destroy();
      server.destroy();
    };
    for (const socket of [browser, server]) {
      open.add(socket);
      socket.on('error', end).on('close', () => {
        open.delete(socket);
        end();
      });
    }
    browser.on('data', (bytes) => {
      carried += bytes.length;
      if (left > 0 && carried > limit) {
        left -= 1;
        broken += 1;
        end();
      }
    });
    browser.pipe(server);
    server.pipe(browser);
  }).listen(0, '127.0.0.1');
  await once(line, 'listening');
  const address = line.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return {
    port: address.port,
    breakNext: (times, afterBytes) => {
      left = times;
      limit = afterBytes;
    },
    breaks: () => broken,
    close: () => {
      for (const socket of open) socket.destroy();
      line.close();
    },
  };
}
