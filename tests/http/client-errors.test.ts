import { once } from 'node:events';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp } from '../support/test-app.ts';

describe('what never becomes a request', () => {
  let test: TestApp;
  let port: number;
  beforeAll(async () => {
    test = await openTestApp('embedded');
    port = Number(new URL(await test.app.listen({ host: '127.0.0.1', port: 0 })).port);
  });
  afterAll(() => test.close());

  /** Sends bytes as they are; gives the whole answer. */
  const answerTo = async (bytes: string): Promise<{ head: string; body: string }> => {
    const socket = connect(port, '127.0.0.1');
    let answer = '';
    socket.setEncoding('utf8').on('data', (chunk) => {
      answer += chunk;
    });
    socket.on('error', () => undefined);
    socket.write(bytes);
    await once(socket, 'close');
    const [head = '', body = ''] = answer.split('\r\n\r\n');
    return { head, body };
  };

  it.each([
    ['headers of 40 kB', `GET /sites HTTP/1.1\r\nhost: x\r\nx-long: ${'a'.repeat(40_000)}\r\n\r\n`, 431],
    ['no HTTP', 'EHLO there\r\n\r\n', 400],
  ])('%s is a problem all the same', async (_name, bytes, status) => {
    const { head, body } = await answerTo(bytes);
    expect(head).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
    expect(head).toContain('content-type: application/problem+json');
    expect(JSON.parse(body)).toMatchObject({ status, type: expect.stringMatching(/^\/problems\//) });
  });
});
