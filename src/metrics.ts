import { once } from 'node:events';
import { statfs } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { FastifyInstance } from 'fastify';
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Services } from './services.ts';

/** Where figures are told; apart from the address that requests come to, so that a firewall keeps strangers off. */
export type MetricsPlace = { readonly host: string; readonly port: number };

export type Metrics = {
  readonly registry: Registry;
  /** Measures every request that the application answers. */
  follow(app: FastifyInstance): void;
};

type Measured = Pick<Services, 'config' | 'database' | 'heavyWork'>;

/** Assumed: from what nobody notices to what nobody waits for. */
const bucketsS = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30];

/**
 * What the process does, for Prometheus: requests by route and status, the event loop's delay and memory (prom-client's own
 * `nodejs_…` and `process_…`), queues, connections to the database, room on the disk, and how late news are. No figure
 * names an organisation, a person or a ticket.
 */
export function createMetrics({ config, database, heavyWork }: Measured): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const registers = [registry];
  const requests = new Histogram({
    name: 'halfsplit_request_seconds',
    help: 'How long requests took, by method, route and status',
    labelNames: ['method', 'route', 'status'],
    buckets: bucketsS,
    registers,
  });
  new Gauge({
    name: 'halfsplit_queue_length',
    help: 'Heavy work that is asked for and not done yet, by queue',
    labelNames: ['queue'],
    registers,
    collect() {
      for (const [queue, length] of Object.entries(heavyWork.lengths())) this.set({ queue }, length);
    },
  });
  new Gauge({
    name: 'halfsplit_database_connections',
    help: 'Connections to the database that are in use or idle, and requests that wait for one',
    labelNames: ['state'],
    registers,
    collect() {
      const { inUse, idle, waiting } = database.load();
      for (const [state, count] of Object.entries({ inUse, idle, waiting })) this.set({ state }, count);
    },
  });
  new Gauge({
    name: 'halfsplit_news_lag_seconds',
    help: 'For how long the oldest news that are committed have waited to be told',
    registers,
    collect() {
      this.set(database.load().newsLagMs / 1000);
    },
  });
  new Gauge({
    name: 'halfsplit_disk_free_bytes',
    help: "Room on the data folder's disk",
    registers,
    async collect() {
      const { bavail, bsize } = await statfs(config.dataFolder);
      this.set(bavail * bsize);
    },
  });
  return {
    registry,
    follow: (app) => {
      app.addHook('onResponse', async (request, reply) => {
        const route = request.routeOptions.url ?? 'none';
        const labels = { method: request.method, route, status: String(reply.statusCode) };
        requests.observe(labels, reply.elapsedTime / 1000);
      });
    },
  };
}

/** Tells the figures at `/metrics` of an address of their own, to whoever can reach it. */
export async function listenForMetrics(
  { registry }: Metrics,
  { host, port }: MetricsPlace,
): Promise<{ readonly port: number; stop(): void }> {
  const server = createServer((request, answer) => {
    if (request.method !== 'GET' || request.url !== '/metrics') {
      answer.writeHead(404).end();
      return;
    }
    registry.metrics().then(
      (text) => answer.writeHead(200, { 'content-type': registry.contentType }).end(text),
      () => answer.writeHead(500).end(),
    );
  });
  server.listen(port, host);
  await once(server, 'listening');
  const address = server.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : port,
    stop: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
