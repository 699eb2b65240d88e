import { randomUUID } from 'node:crypto';
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type pg from 'pg';
import supertest from 'supertest';
import { demoPassword, firm } from '../../seed/firm.ts';
import { createApp } from '../../src/app.ts';
import { databaseOver } from '../../src/database/index.ts';
import { migrate, migrationsFolder } from '../../src/database/migrate.ts';
import { openEvidenceStore } from '../../src/evidence-store/index.ts';
import { requestHash } from '../../src/http/idempotency.ts';
import { createLogger } from '../../src/http/logging.ts';
import type { Services } from '../../src/services.ts';
import type { OutboxEntry } from '../../src/web/store/outbox-entry.ts';
import {
  heavyWorkHere,
  type TestMember,
  type TestReply,
  testMemberOf,
  usualTestConfig,
} from '../support/test-app.ts';
import { type DatabaseKind, openEmptyDatabase } from '../support/test-database.ts';
import {
  type FrozenDatabase,
  frozenInserts,
  frozenMigrations,
  readFrozenDatabase,
  readFrozenEvidence,
} from './frozen-1.ts';

/** A folder with the migrations that version 1 had and no later ones. */
async function migrationsOf(frozen: FrozenDatabase): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'halfsplit-frozen-'));
  for (const name of frozenMigrations(frozen)) {
    await cp(join(migrationsFolder, name), join(folder, name), { recursive: true });
  }
  return folder;
}

/** Makes of an empty database one of version 1, as version 1 left it. */
export async function fillAsVersion1(client: pg.PoolClient, frozen: FrozenDatabase): Promise<void> {
  const folder = await migrationsOf(frozen);
  try {
    await migrate(client, folder);
    for (const { sql, values } of frozenInserts(frozen)) await client.query(sql, values);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export type FrozenApp = {
  readonly app: FastifyInstance;
  readonly services: Services;
  /** A member of the demo's firm. */
  signIn(email: string): Promise<TestMember>;
  /** Sends a file for the evidence of the ticket at a path. */
  sendFile(
    member: TestMember,
    path: string,
    file: { about: object; bytes: Buffer; key: string },
  ): Promise<TestReply>;
  /**
   * What made two requests the same was hashed under the secret of the server of then, which is not in the tests: hashes
   * a command that had been sent under today's.
   */
  hashAsHere(entry: OutboxEntry): Promise<void>;
  /** SQL as the database's owner. */
  tamper(sql: string, values: unknown[]): Promise<void>;
  close(): Promise<void>;
};

/** Today's server over a database of version 1 and the evidence store that belonged to it. */
export async function openFrozenApp(
  kind: DatabaseKind,
  name: 'database' | 'database-planted' = 'database',
): Promise<FrozenApp> {
  const { connections, drop } = await openEmptyDatabase(kind);
  const client = await connections.pool.connect();
  try {
    await fillAsVersion1(client, readFrozenDatabase(name));
  } finally {
    client.release();
  }
  const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-frozen-app-'));
  const evidenceStore = await openEvidenceStore({ folder: join(dataFolder, 'evidence') });
  for (const { orgId, bytes } of readFrozenEvidence()) {
    await evidenceStore.put(orgId, Readable.from([bytes]), { maxBytes: bytes.length });
  }
  const database = await databaseOver(connections);
  const services: Services = {
    config: { ...usualTestConfig, dataFolder },
    database,
    evidenceStore,
    heavyWork: heavyWorkHere(),
    now: () => new Date(),
    newId: randomUUID,
    isStopping: () => false,
  };
  const app = await createApp(services, createLogger('silent'));
  const tamper = async (sql: string, values: unknown[]): Promise<void> => {
    await connections.pool.query(sql, values);
  };
  return {
    app,
    services,
    signIn: async (email) => {
      const body = { organisation: firm.handle, email, password: demoPassword };
      const answer = await supertest(app.server).post('/auth/sign-in').send(body).expect(200);
      return testMemberOf(app, answer.body);
    },
    sendFile: async ({ accessToken }, path, { about, bytes, key }) =>
      supertest(app.server)
        .post(`${path}/evidence`)
        .set({ authorization: `Bearer ${accessToken}`, 'idempotency-key': key })
        .field('about', JSON.stringify(about))
        .attach('file', bytes, 'file'),
    hashAsHere: async (entry) => {
      if (entry.kind !== 'command') throw new Error('only commands were sent');
      const request = { method: 'POST', url: `/tickets/${entry.ticketId}/commands`, headers: {} };
      const hash = requestHash(services.config.tokenSecrets[0], request as FastifyRequest, entry.command);
      await tamper('update idempotency_record set request_hash = $1 where key = $2', [hash, entry.id]);
    },
    tamper,
    close: async () => {
      await app.close();
      await database.close();
      await drop().catch(() => undefined);
      await rm(dataFolder, { recursive: true, force: true });
    },
  };
}
