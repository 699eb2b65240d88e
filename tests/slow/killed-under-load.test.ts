import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { expectStatus, overHttp, type Session, signIn } from '../../seed/session.ts';
import { freePort, startProgram } from '../support/server-process.ts';
import { databaseKinds, openTestDatabase } from '../support/test-database.ts';

const kills = 20;
const writers = 6;
/** Each round is killed after so many acknowledged writes and a delay of its own: at different moments of a write. */
const writesBefore = (kill: number): number => 3 + (kill % 5);
const delayMs = (kill: number): number => (kill * 7) % 40;

describe.each(databaseKinds())('a server killed under write load, on the %s database', (kind) => {
  const cleanUps: (() => Promise<void>)[] = [];
  afterEach(async () => {
    for (const cleanUp of cleanUps.splice(0).toReversed()) await cleanUp();
  });

  it(`has every acknowledged write after ${kills} kills, and whole logs`, async () => {
    const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-kill-'));
    cleanUps.push(() => rm(dataFolder, { recursive: true, force: true }));
    const onServer = kind === 'server' ? await openTestDatabase(kind) : null;
    if (onServer !== null) cleanUps.push(onServer.drop);
    const port = await freePort();
    const env = {
      ...process.env,
      HALFSPLIT_DATA: dataFolder,
      PORT: String(port),
      LOG_LEVEL: 'warn',
      HALFSPLIT_TOKEN_SECRET: 'the same secret over all the restarts of this test',
      ...(onServer?.databaseUrl === undefined ? {} : { DATABASE_URL: onServer.databaseUrl }),
    };
    const base = `http://127.0.0.1:${port}`;

    let server = await startProgram('seed/run-demo.ts', env, base);
    cleanUps.push(async () => {
      server.kill('SIGKILL');
    });
    const tickets = await ticketIds(await signedIn(base));
    const acknowledged = new Map<string, string[]>(tickets.map((id) => [id, []]));
    for (let kill = 0; kill < kills; kill += 1) {
      const session = await signedIn(base);
      const load = Array.from({ length: writers }, (_, at) =>
        writeUntilDead(session, tickets[at % tickets.length] ?? '', acknowledged),
      );
      await acknowledgedMore(acknowledged, writesBefore(kill));
      const gone = once(server, 'exit');
      setTimeout(() => server.kill('SIGKILL'), delayMs(kill));
      await gone;
      await Promise.all(load);
      server = await startProgram('src/main.ts', env, base);
    }

    const reader = await signedIn(base);
    expect(countOf(acknowledged)).toBeGreaterThan(kills * 3);
    for (const [ticketId, texts] of acknowledged) await expectWhole(reader, ticketId, texts);
  });
});

/** Everything acknowledged is there once, numbers have no gap, hashes hold, the snapshot is what replay gives. */
async function expectWhole(
  session: Session,
  ticketId: string,
  acknowledged: readonly string[],
): Promise<void> {
  const { body: check } = await session.get(`/tickets/${ticketId}/log/check`);
  expect(check).toMatchObject({ isClean: true });
  const { body: log } = await session.get<{ items: { payload: { text?: string } }[] }>(
    `/tickets/${ticketId}/log`,
  );
  const written = log.items.map((event) => event.payload.text).filter((text) => text !== undefined);
  expect(new Set(written).size).toBe(written.length);
  expect(acknowledged.filter((text) => !written.includes(text))).toEqual([]);
}

async function writeUntilDead(
  session: Session,
  ticketId: string,
  acknowledged: Map<string, string[]>,
): Promise<void> {
  for (;;) {
    const text = randomUUID();
    try {
      await session.command(ticketId, { type: 'note', text });
      acknowledged.get(ticketId)?.push(text);
    } catch (error) {
      if (error instanceof Error && error.message.startsWith('expected status')) throw error;
      return;
    }
  }
}

const countOf = (acknowledged: Map<string, string[]>): number => [...acknowledged.values()].flat().length;

async function acknowledgedMore(acknowledged: Map<string, string[]>, writes: number): Promise<void> {
  const wanted = countOf(acknowledged) + writes;
  while (countOf(acknowledged) < wanted) await new Promise((resolve) => setTimeout(resolve, 2));
}

const signedIn = (base: string): Promise<Session> =>
  signIn(overHttp(base), 'lanternrow', 'brask@lanternrow.example');

async function ticketIds(session: Session): Promise<string[]> {
  const page = expectStatus(await session.get<{ items: { id: string }[] }>('/tickets?state=open'), 200);
  return page.items.map((ticket) => ticket.id);
}
