import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../src/app.ts';
import { readConfig } from '../src/config.ts';
import { createLogger } from '../src/http/logging.ts';
import { createMetrics, listenForMetrics } from '../src/metrics.ts';
import { openTestApp, type TestApp } from './support/test-app.ts';
import { openTestTicket } from './support/tickets.ts';

describe('figures for Prometheus', () => {
  let test: TestApp;
  let told: Awaited<ReturnType<typeof listenForMetrics>>;
  let base: string;

  beforeAll(async () => {
    test = await openTestApp('embedded');
    const metrics = createMetrics(test.services);
    const app = await createApp(test.services, createLogger('silent'), metrics);
    told = await listenForMetrics(metrics, { host: '127.0.0.1', port: 0 });
    base = `http://127.0.0.1:${told.port}`;
    const { ticketId } = await openTestTicket(test);
    const headers = { authorization: `Bearer ${test.home.technician.accessToken}` };
    for (const url of [`/tickets/${ticketId}`, '/nowhere', '/metrics']) await app.inject({ url, headers });
    await app.close();
  });
  afterAll(async () => {
    told.stop();
    await test.close();
  });

  it('count requests by route and status, and name no ticket', async () => {
    const text = await (await fetch(`${base}/metrics`)).text();
    expect(text).toMatch(
      /^halfsplit_request_seconds_count\{method="GET",route="\/tickets\/:id",status="200"\} 1$/m,
    );
    expect(text).toMatch(/status="404"\} /);
    expect(text).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-/);
  });

  it('tell the event loop, queues, connections, disk and how late news are', async () => {
    const text = await (await fetch(`${base}/metrics`)).text();
    const figureOf = (name: string): number => {
      const line = text.split('\n').find((each) => each.startsWith(`${name} `));
      return Number(line?.slice(name.length));
    };
    expect(figureOf('nodejs_eventloop_lag_seconds')).toBeGreaterThanOrEqual(0);
    expect(figureOf('halfsplit_queue_length{queue="photos"}')).toBe(0);
    expect(figureOf('halfsplit_database_connections{state="idle"}')).toBe(1);
    expect(figureOf('halfsplit_disk_free_bytes')).toBeGreaterThan(1);
    expect(figureOf('halfsplit_news_lag_seconds')).toBe(0);
  });

  it('are at no address that requests come to, and nothing else is at theirs', async () => {
    expect((await test.request().get('/metrics')).status).toBe(404);
    expect((await fetch(`${base}/tickets`)).status).toBe(404);
    expect((await fetch(`${base}/metrics`, { method: 'POST' })).status).toBe(404);
  });

  it('are told where a setting says, and nowhere without one', () => {
    const folder = mkdtempSync(join(tmpdir(), 'halfsplit-metrics-'));
    const read = (given: string | undefined) =>
      readConfig({ HALFSPLIT_DATA: folder, HALFSPLIT_METRICS: given }).metrics;
    expect(read(undefined)).toBeNull();
    expect(read('127.0.0.1:9464')).toEqual({ host: '127.0.0.1', port: 9464 });
    expect(() => read('9464')).toThrow(/HALFSPLIT_METRICS/);
    rmSync(folder, { recursive: true });
  });
});
