import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { get } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TLSSocket } from 'node:tls';
import { PGlite } from '@electric-sql/pglite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readConfig } from '../../src/config.ts';
import { extensions } from '../../src/database/pools.ts';
import { readTlsPair } from '../../src/http/tls.ts';
import { type RunningServer, startServer } from '../../src/start.ts';
import { startFault } from '../../src/start-fault.ts';
import { migratedDataFolder } from '../support/test-database.ts';

// Self-signed, for localhost, and for nothing but these tests.
const kept = join(import.meta.dirname, 'tls');
const folder = mkdtempSync(join(tmpdir(), 'halfsplit-tls-'));
const files = { certificate: join(folder, 'in-use.crt'), key: join(folder, 'in-use.key') };
const put = (name: 'first' | 'second'): void => {
  copyFileSync(join(kept, `${name}.crt`), files.certificate);
  copyFileSync(join(kept, `${name}.key`), files.key);
};
const authorities = ['first', 'second'].map((name) => readFileSync(join(kept, `${name}.crt`), 'utf8'));

describe('a server with a certificate of its own', () => {
  let server: RunningServer;
  const config = (env: NodeJS.ProcessEnv = {}) =>
    readConfig({
      HALFSPLIT_DATA: folder,
      HALFSPLIT_TLS_CERT: files.certificate,
      HALFSPLIT_TLS_KEY: files.key,
      HALFSPLIT_DRAIN_S: '1.5',
      LOG_LEVEL: 'silent',
      PORT: '0',
      ...env,
    });
  const ask = (
    path: string,
  ): Promise<{ name: string; status: number | undefined; hsts: boolean; body: string }> =>
    new Promise((resolve, reject) => {
      const request = get(`${server.address}${path}`, { ca: authorities, agent: false }, (response) => {
        const name = String((response.socket as TLSSocket).getPeerCertificate().subject.CN);
        let body = '';
        response.on('data', (chunk) => {
          body += chunk;
        });
        const hsts = response.headers['strict-transport-security'] !== undefined;
        response.on('end', () => resolve({ name, status: response.statusCode, hsts, body }));
      });
      request.on('error', reject);
    });

  beforeAll(async () => {
    put('first');
    const loadDataDir = await migratedDataFolder();
    await (await PGlite.create(join(folder, 'postgres'), { loadDataDir, extensions })).close();
    server = await startServer(config(), { certificateLookEveryMs: 50 });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('answers over HTTPS, and tells browsers to stay there', async () => {
    expect(server.address).toMatch(/^https:/);
    expect(await ask('/readyz')).toMatchObject({ name: 'first.example', status: 200, hsts: true });
  });

  it('takes a renewed certificate without a restart, and keeps the one before while a pair does not fit', async () => {
    copyFileSync(join(kept, 'second.crt'), files.certificate);
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect((await ask('/healthz')).name).toBe('first.example');
    put('second');
    await expect.poll(async () => (await ask('/healthz')).name).toBe('second.example');
  });

  it('says that it stops before it takes no more requests', async () => {
    const stopped = server.stop();
    expect(await ask('/readyz')).toMatchObject({ status: 503, body: '{"status":"stopping"}' });
    expect((await ask('/healthz')).status).toBe(200);
    await stopped;
    await expect(ask('/healthz')).rejects.toThrow();
  });

  it('does not start with half a pair, or one that does not fit, and names the setting', () => {
    const faultOf = (work: () => unknown): string => {
      try {
        work();
        return 'none';
      } catch (error) {
        return startFault(error);
      }
    };
    writeFileSync(join(folder, 'empty'), '');
    expect(faultOf(() => config({ HALFSPLIT_TLS_KEY: undefined }))).toMatch(/^HALFSPLIT_TLS_KEY: /);
    expect(faultOf(() => config({ HALFSPLIT_TLS_CERT: undefined }))).toMatch(/^HALFSPLIT_TLS_CERT: /);
    const pair = (certificate: string, key: string) => faultOf(() => readTlsPair({ certificate, key }));
    expect(pair(join(kept, 'first.crt'), join(kept, 'second.key'))).toMatch(/^HALFSPLIT_TLS_KEY: /);
    expect(pair(join(folder, 'none'), files.key)).toMatch(/^HALFSPLIT_TLS_CERT: /);
    expect(pair(files.certificate, join(folder, 'empty'))).toMatch(/^HALFSPLIT_TLS_KEY: /);
  });
});
