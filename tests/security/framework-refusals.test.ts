import type { AddressInfo } from 'node:net';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp } from '../support/test-app.ts';

const problemType = 'application/problem+json';
const long = 'x'.repeat(300);

/** Requests that are refused before a route of ours is asked, or by a package that it is handed to: status by request. */
const refusals: [string, number, string?, Record<string, string>?][] = [
  ['GET /sites/%ff', 400],
  ['GET /sites/%', 400],
  [`GET /sites/${long}`, 404],
  [`GET /packets/${long}/download`, 404],
  [`HEAD /uploads/${long}`, 404],
  ['GET /no/such/address', 404],
  ['GET /problems/no-such-kind', 404],
  ['GET /assets/../../package.json', 404],
  ['GET /assets/%2e%2e%2f%2e%2e%2fpackage.json', 400],
  ['GET /reference/openapi/static/no-such-file', 404],
  ['GET //sites', 404],
  ['DELETE /sites', 405],
  ['TRACE /sites', 405],
  ['POST /sites', 400, '{'],
  ['POST /sites', 400, ''],
  ['POST /sites', 400, '{"__proto__":{"isAdmin":true}}'],
  ['POST /sites', 400, '"\\ud800"'],
  ['POST /sites', 415, 'a=b', { 'content-type': 'application/x-www-form-urlencoded' }],
  ['POST /sites', 415, 'x', { 'content-type': 'nonsense' }],
  ['POST /sites', 413, `"${'x'.repeat(5 * 1024 * 1024)}"`],
  ['POST /tickets/00000000-0000-4000-8000-000000000000/evidence', 415, '{}'],
  [
    'POST /tickets/00000000-0000-4000-8000-000000000000/evidence',
    400,
    'x',
    { 'content-type': 'multipart/form-data' },
  ],
  ['POST /uploads', 400, '', { 'tus-resumable': '1.0.0', 'upload-length': 'x' }],
  ['POST /uploads', 400, '', { 'tus-resumable': '0.1', 'upload-length': '1' }],
  ['PATCH /uploads/00000000-0000-4000-8000-000000000000', 404, 'x', { 'tus-resumable': '1.0.0' }],
];

describe('what the framework refuses', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp('embedded');
    await test.app.listen({ port: 0, host: '127.0.0.1' });
  });
  afterAll(() => test.close());

  it.each(refusals)('is a problem document: %s', async (line, status, body, headers = {}) => {
    const [method = '', url = ''] = line.split(' ');
    const reply = await test.app.inject({
      method: method as 'GET',
      url,
      headers: {
        authorization: `Bearer ${test.home.admin.accessToken}`,
        'idempotency-key': 'a key for one test',
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { payload: body }),
    });
    expect([reply.statusCode, reply.headers['content-type']]).toEqual([
      status,
      expect.stringContaining(problemType),
    ]);
    if (method === 'HEAD') return;
    const problem = reply.json();
    expect(problem).toMatchObject({ status, title: expect.any(String), detail: expect.any(String) });
    expect(reply.payload).not.toMatch(/node_modules|\.ts:|at \w+ \(|select |prisma/i);
  });

  it('ends a connection whose message has two lengths', async () => {
    const { port } = test.app.server.address() as AddressInfo;
    const answer = await new Promise<string>((resolve) => {
      const socket = connect(port, '127.0.0.1', () =>
        socket.write(
          'POST /sites HTTP/1.1\r\nhost: x\r\ncontent-length: 5\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\nGET /me HTTP/1.1\r\n\r\n',
        ),
      );
      let text = '';
      socket.on('data', (chunk) => {
        text += String(chunk);
      });
      socket.on('close', () => resolve(text));
    });
    expect(answer).toMatch(/^HTTP\/1\.1 400 /);
    expect(answer).toContain(problemType);
    expect(answer.match(/HTTP\/1\.1/g)).toHaveLength(1);
  });
});
