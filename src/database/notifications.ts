import { setTimeout } from 'node:timers/promises';
import pg from 'pg';

export type Listener = {
  /** The text of one notification, as NOTIFY was given it. */
  heard(payload: string): void;
  /** Notifications may have been missed: the connection was lost and is there again. */
  missed(): void;
};
/** Listens on a channel until the function that it gives back is called. */
export type Listen = (channel: string, listener: Listener) => Promise<() => Promise<void>>;

/** Assumed: soon enough for a person who waits, seldom enough for a server that starts up. */
const waitBeforeRetryMs = [250, 500, 1_000, 2_000, 5_000] as const;

/**
 * On a server: a connection of its own, since a pool's connections come and go. A lost one is made again, and the
 * listener told that it missed something.
 * @throws the driver's error when the first connection can't be made
 */
export function listenOnServer(databaseUrl: string): Listen {
  return async (channel, listener) => {
    let stopped = false;
    let current: pg.Client | null = null;
    const connect = async (): Promise<void> => {
      const client = new pg.Client({
        connectionString: databaseUrl,
        application_name: 'halfsplit news',
        keepAlive: true,
      });
      client.on('error', () => undefined);
      client.on('notification', ({ payload }) => listener.heard(payload ?? ''));
      client.on('end', () => {
        if (!stopped && current === client) void reconnect();
      });
      try {
        await client.connect();
        await client.query(`listen ${pg.escapeIdentifier(channel)}`);
      } catch (error) {
        await client.end().catch(() => undefined);
        throw error;
      }
      if (stopped) await client.end();
      else current = client;
    };
    const reconnect = async (): Promise<void> => {
      current = null;
      for (let attempt = 0; !stopped; attempt += 1) {
        await setTimeout(waitBeforeRetryMs[Math.min(attempt, waitBeforeRetryMs.length - 1)], undefined, {
          ref: false,
        });
        const connected = await connect().then(
          () => true,
          () => false,
        );
        if (connected) return listener.missed();
      }
    };
    await connect();
    return async () => {
      stopped = true;
      await current?.end();
    };
  };
}

/** On the embedded database, which one process has open at a time: who tells and who hears are in it. */
export function listenHere(): { listen: Listen; tell(news: readonly string[]): void } {
  const listeners = new Set<Listener>();
  return {
    listen: async (_channel, listener) => {
      listeners.add(listener);
      return async () => {
        listeners.delete(listener);
      };
    },
    tell: (news) => {
      for (const payload of news) for (const { heard } of listeners) heard(payload);
    },
  };
}
