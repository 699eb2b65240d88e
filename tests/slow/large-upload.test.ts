import { createHash } from 'node:crypto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { expectStatus, overHttp, type Session, signIn } from '../../seed/session.ts';
import { freePort, startProgram } from '../support/server-process.ts';

const mebibyte = 1024 * 1024;
const sizeBytes = 500 * mebibyte;
const growthAllowedKiB = 100 * 1024;

const cleanUps: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0).toReversed()) await cleanUp();
});

it('takes 500 MB over a link that breaks twice, with the right hash and flat memory', async () => {
  const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-upload-'));
  cleanUps.push(() => rm(dataFolder, { recursive: true, force: true }));
  const port = await freePort();
  const base = `http://127.0.0.1:${port}`;
  const env = {
    ...process.env,
    HALFSPLIT_DATA: dataFolder,
    PORT: String(port),
    LOG_LEVEL: 'warn',
    DATABASE_URL: undefined,
  };
  const server = await startProgram('seed/run-demo.ts', env, base);
  cleanUps.push(async () => {
    server.kill('SIGKILL');
  });
  const session = await signIn(overHttp(base), 'lanternrow', 'brask@lanternrow.example');
  const authorization = await bearerOf(base);
  const location = await beginUpload(base, authorization, await ticketOf(session));

  const before = await residentKiB(server.pid);
  let peak = before;
  const sampling = setInterval(async () => {
    peak = Math.max(peak, await residentKiB(server.pid).catch(() => 0));
  }, 100);
  await sendPart(location, authorization, 0, 180 * mebibyte, 'break');
  const afterFirst = await offsetOf(location, authorization);
  await sendPart(location, authorization, afterFirst, 200 * mebibyte, 'break');
  const afterSecond = await offsetOf(location, authorization);
  const evidenceId = await sendPart(location, authorization, afterSecond, sizeBytes - afterSecond, 'finish');
  clearInterval(sampling);

  expect(afterFirst).toBeGreaterThan(0);
  expect(afterSecond).toBeGreaterThan(afterFirst);
  expect(afterSecond).toBeLessThan(sizeBytes);
  const item = expectStatus(
    await session.get<{ sha256: string; sizeBytes: number }>(`/evidence/${evidenceId}`),
    200,
  );
  expect(item).toMatchObject({ sizeBytes, sha256: expectedHash() });
  expect(peak - before).toBeLessThan(growthAllowedKiB);
});

/** The bytes of a text log, told by their offset alone, so that any part can be sent again. */
function bytesAt(offset: number, length: number): Buffer {
  const lineBytes = 64;
  const firstLine = Math.floor(offset / lineBytes);
  const lines = Math.ceil((offset + length) / lineBytes) - firstLine;
  const text = Array.from({ length: lines }, (_, at) =>
    `line ${firstLine + at} of a log that is long and says little`.padEnd(lineBytes - 1).concat('\n'),
  ).join('');
  const skip = offset - firstLine * lineBytes;
  return Buffer.from(text, 'latin1').subarray(skip, skip + length);
}

function expectedHash(): string {
  const hash = createHash('sha256');
  for (let offset = 0; offset < sizeBytes; offset += mebibyte) hash.update(bytesAt(offset, mebibyte));
  return hash.digest('hex');
}

async function residentKiB(pid: number | undefined): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8');
  return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]);
}

async function bearerOf(base: string): Promise<string> {
  const answer = await fetch(`${base}/auth/sign-in`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      organisation: 'lanternrow',
      email: 'brask@lanternrow.example',
      password: 'demo-only-halfsplit',
    }),
  });
  const { accessToken } = (await answer.json()) as { accessToken: string };
  return `Bearer ${accessToken}`;
}

async function ticketOf(session: Session): Promise<string> {
  const page = expectStatus(
    await session.get<{ items: { id: string }[] }>('/tickets?assigneeId=me&state=open'),
    200,
  );
  return page.items[0]?.id ?? '';
}

const base64 = (text: string): string => Buffer.from(text).toString('base64');

async function beginUpload(base: string, authorization: string, ticketId: string): Promise<string> {
  const about = base64(JSON.stringify({ kind: 'log', description: 'A long log' }));
  const answer = await fetch(`${base}/uploads`, {
    method: 'POST',
    headers: {
      authorization,
      'tus-resumable': '1.0.0',
      'upload-length': String(sizeBytes),
      'upload-metadata': `ticketId ${base64(ticketId)},about ${about},filename ${base64('long.log')}`,
    },
  });
  expect(answer.status).toBe(201);
  return new URL(answer.headers.get('location') ?? '', base).href;
}

async function offsetOf(location: string, authorization: string): Promise<number> {
  // The server notices a broken connection a moment later; until then the upload is locked.
  for (let attempt = 0; attempt < 100; attempt += 1) {
    const answer = await fetch(location, {
      method: 'HEAD',
      headers: { authorization, 'tus-resumable': '1.0.0' },
    });
    if (answer.status === 200) return Number(answer.headers.get('upload-offset'));
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('the upload stayed locked');
}

/** Sends bytes from an offset on; `break` cuts the connection after them, `finish` waits for the reply's Evidence-Id. */
function sendPart(
  location: string,
  authorization: string,
  offset: number,
  length: number,
  end: 'break' | 'finish',
): Promise<string | undefined> {
  return new Promise((resolve, reject) => {
    const sending = request(location, {
      method: 'PATCH',
      headers: {
        authorization,
        'tus-resumable': '1.0.0',
        'upload-offset': String(offset),
        'content-type': 'application/offset+octet-stream',
        'content-length': String(sizeBytes - offset),
      },
    });
    sending.on('error', (error) => (end === 'break' ? resolve(undefined) : reject(error)));
    sending.on('response', (answer) => {
      answer.resume();
      if (answer.statusCode === 204) resolve(answer.headers['evidence-id'] as string | undefined);
      else reject(new Error(`the upload answered ${answer.statusCode}`));
    });
    write(sending, offset, offset + length).then(() => {
      if (end === 'break') sending.destroy();
      else sending.end();
    }, reject);
  });
}

async function write(sending: NodeJS.WritableStream, from: number, to: number): Promise<void> {
  for (let offset = from; offset < to; offset += mebibyte) {
    const flowing = sending.write(bytesAt(offset, Math.min(mebibyte, to - offset)));
    if (!flowing) await new Promise((resolve) => sending.once('drain', resolve));
  }
}
