import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp } from '../../support/test-app.ts';

describe('the files of the client', () => {
  let test: TestApp;
  let unbuilt: TestApp;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'halfsplit-client-'));
    await mkdir(join(folder, 'built/assets'), { recursive: true });
    await writeFile(join(folder, 'secret.txt'), 'not for anybody');
    await writeFile(join(folder, 'built/index.html'), '<!doctype html><title>Halfsplit</title>');
    await writeFile(join(folder, 'built/sw.js'), '/* service worker */');
    const script = 'console.log(1);'.repeat(100);
    await writeFile(join(folder, 'built/assets/main-abc.js'), script);
    await writeFile(join(folder, 'built/assets/main-abc.js.br'), brotliCompressSync(script));
    test = await openTestApp('embedded', { clientFolder: join(folder, 'built') });
    unbuilt = await openTestApp('embedded', { clientFolder: join(folder, 'none') });
  });
  afterAll(async () => {
    await test.close();
    await unbuilt.close();
    await rm(folder, { recursive: true, force: true });
  });

  it.each(['/', '/index.html', '/app', '/app/visits', '/app/visits/any-id?x=1'])(
    'open with its page at %s, asked for anew each time, under the policy without inline code',
    async (path) => {
      const answer = await test.request().get(path);
      expect(answer.status).toBe(200);
      expect(answer.text).toContain('<title>Halfsplit</title>');
      expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
      expect(answer.headers['cache-control']).toBe('no-cache');
      expect(answer.headers['content-security-policy']).toContain("default-src 'self'");
      expect(answer.headers['content-security-policy']).not.toContain('unsafe');
    },
  );

  it('keep a hashed file for good, compressed where it was built so', async () => {
    const answer = await test.request().get('/assets/main-abc.js').set('accept-encoding', 'br');
    expect(answer.status).toBe(200);
    expect(answer.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(answer.headers['content-encoding']).toBe('br');
    expect(answer.headers['content-type']).toContain('javascript');
    const plain = await test.request().get('/assets/main-abc.js').set('accept-encoding', 'identity');
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(plain.text ?? plain.body.toString()).toContain('console.log(1)');
  });

  it('ask for the service worker anew each time', async () => {
    const answer = await test.request().get('/sw.js');
    expect(answer.status).toBe(200);
    expect(answer.headers['cache-control']).toBe('no-cache');
  });

  it.each([
    '/assets/none.js',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/%2e%2e/%2e%2e/secret.txt',
    '/apple',
    '/appear/x',
  ])('are a problem, not kept, where there is none: %s', async (path) => {
    const answer = await test.request().get(path);
    expect([400, 403, 404]).toContain(answer.status);
    expect(answer.text).not.toContain('not for anybody');
    expect(answer.headers['content-type']).toContain('application/problem+json');
    expect(answer.headers['cache-control'] ?? 'no-store').toBe('no-store');
  });

  it('leave the addresses of the API to it', async () => {
    expect((await test.request().get('/tickets')).status).toBe(401);
    expect((await test.request().get('/openapi.json')).body.openapi).toMatch(/^3\.1/);
  });

  it('say what to do where they were not built', async () => {
    const answer = await unbuilt.request().get('/');
    expect(answer.status).toBe(404);
    expect(answer.body.said.code).toBe('clientNotBuilt');
  });
});
