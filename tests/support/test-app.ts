import { generateKeyPairSync, randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import supertest from 'supertest';
import type { MemberRole } from '../../shared/contract/primitives.ts';
import { memberRoles } from '../../shared/contract/primitives.ts';
import { createApp } from '../../src/app.ts';
import { builtClient, type Config } from '../../src/config.ts';
import { openEvidenceStore } from '../../src/evidence-store/index.ts';
import { provisionOrganisation } from '../../src/features/people/index.ts';
import { type HeavyWork, openHeavyWork } from '../../src/heavy-work/index.ts';
import { run } from '../../src/heavy-worker.ts';
import { createLogger } from '../../src/http/logging.ts';
import type { Services } from '../../src/services.ts';
import { type DatabaseKind, openTestDatabase } from './test-database.ts';

export const testPassword = 'a password for tests';

export type Send = {
  body?: object | string;
  ifMatch?: string;
  key?: string;
  headers?: Record<string, string>;
};
export type TestReply = supertest.Response;

/** A signed-in member of a test organisation. */
export type TestMember = {
  readonly id: string;
  readonly role: MemberRole;
  readonly email: string;
  readonly accessToken: string;
  readonly refreshToken: string;
  get(path: string, headers?: Record<string, string>): Promise<TestReply>;
  post(path: string, send?: Send): Promise<TestReply>;
  put(path: string, send?: Send): Promise<TestReply>;
  delete(path: string, send?: Send): Promise<TestReply>;
};

export type TestOrganisation = { readonly orgId: string; readonly handle: string } & Readonly<
  Record<MemberRole, TestMember> & { secondTechnician: TestMember }
>;

export type TestApp = {
  readonly app: FastifyInstance;
  readonly services: Services;
  /** Where a program of its own finds the database; embedded, a copy of it. */
  databaseElsewhere(): Promise<{ dataFolder: string; databaseUrl: string | undefined }>;
  /** Two firms that must not see each other. */
  readonly home: TestOrganisation;
  readonly other: TestOrganisation;
  /** Moves the server's clock. */
  setNow(now: Date | null): void;
  /** SQL as the database's owner, for what no route can do. */
  tamper(sql: string, values: unknown[]): Promise<void>;
  request(): ReturnType<typeof supertest>;
  close(): Promise<void>;
};

export const usualTestConfig: Omit<Config, 'dataFolder'> = {
  databaseUrl: undefined,
  host: '127.0.0.1',
  port: 0,
  logLevel: 'silent',
  tokenSecrets: ['a secret for tests, long enough to be one'],
  signingKey: generateKeyPairSync('ed25519').privateKey,
  accessTokenS: 900,
  refreshTokenDays: 30,
  requestsPerMin: 1_000_000,
  diaryPerMin: 1_000_000,
  quotas: { openUploads: 1e6, storedBytes: 1e15, eventStreams: 1e6, requestsPerMin: 1e6 },
  maxUploadBytes: 1024 * 1024 * 1024,
  heartbeatS: 20,
  clientFolder: builtClient,
  trustProxy: false,
  keepRepliesDays: 90,
  leastFreeBytes: 0,
  drainS: 0,
  metrics: null,
  tls: null,
};

/** What is asked of worker threads, done in this one: where a test is not about the threads, starting them costs seconds. */
export const heavyWorkHere = (): HeavyWork =>
  openHeavyWork(() => ({ execute: (order) => run(order), close: async () => undefined }));

/** The whole application on a fresh database, with two organisations and a member of every role in each. */
export async function openTestApp(
  kind: DatabaseKind,
  { heavyWork = heavyWorkHere(), ...overrides }: Partial<Config & { heavyWork: HeavyWork }> = {},
): Promise<TestApp> {
  const opened = await openTestDatabase(kind);
  const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-test-'));
  let now: Date | null = null;
  const services: Services = {
    config: { ...usualTestConfig, dataFolder, ...overrides },
    database: opened.database,
    evidenceStore: await openEvidenceStore({ folder: join(dataFolder, 'evidence') }),
    heavyWork,
    now: () => now ?? new Date(),
    isStopping: () => false,
    newId: randomUUID,
  };
  const app = await createApp(services, createLogger('silent'));
  return {
    app,
    services,
    databaseElsewhere: async () => {
      const folder = await mkdtemp(join(dataFolder, 'elsewhere-'));
      await opened.copyTo?.(folder);
      return { dataFolder: folder, databaseUrl: opened.databaseUrl };
    },
    home: await openOrganisation(app, services, 'home-firm'),
    other: await openOrganisation(app, services, 'other-firm'),
    setNow: (moment) => {
      now = moment;
    },
    tamper: async (sql, values) => {
      await opened.owner.query(sql, values);
    },
    request: () => supertest(app.server),
    close: async () => {
      await app.close();
      await heavyWork.close();
      await opened.drop();
      await rm(dataFolder, { recursive: true, force: true });
    },
  };
}

async function openOrganisation(
  app: FastifyInstance,
  services: Services,
  handle: string,
): Promise<TestOrganisation> {
  const places: [keyof Omit<TestOrganisation, 'orgId' | 'handle'>, MemberRole][] = [
    ...memberRoles.map((role): [MemberRole, MemberRole] => [role, role]),
    ['secondTechnician', 'technician'],
  ];
  const members = places.map(([place, role]) => ({
    id: randomUUID(),
    name: `${place} of ${handle}`,
    email: `${place.toLowerCase()}@${handle}.example`,
    role,
    password: testPassword,
  }));
  const { orgId } = await provisionOrganisation(services, { handle, name: `The ${handle}`, members });
  const signedIn = await Promise.all(members.map((member) => signInTestMember(app, handle, member.email)));
  const byPlace = Object.fromEntries(places.map(([place], at) => [place, signedIn[at]]));
  return { orgId, handle, ...byPlace } as unknown as TestOrganisation;
}

/** Signs a member in; fails loudly if that is refused. */
export async function signInTestMember(
  app: FastifyInstance,
  organisation: string,
  email: string,
): Promise<TestMember> {
  const answer = await supertest(app.server)
    .post('/auth/sign-in')
    .send({ organisation, email, password: testPassword });
  if (answer.status !== 200) throw new Error(`sign-in answered ${answer.status}: ${answer.text}`);
  return testMemberOf(app, answer.body);
}

type SignedIn = {
  readonly accessToken: string;
  readonly refreshToken: string;
  readonly member: Pick<TestMember, 'id' | 'role' | 'email'>;
};

/** A member by the reply to their sign-in. */
export function testMemberOf(
  app: FastifyInstance,
  { accessToken, refreshToken, member }: SignedIn,
): TestMember {
  const send = async (
    method: 'post' | 'put' | 'delete',
    path: string,
    options: Send = {},
  ): Promise<TestReply> => {
    const request = supertest(app.server)
      [method](path)
      .set('authorization', `Bearer ${accessToken}`)
      .set('idempotency-key', options.key ?? randomUUID());
    if (options.ifMatch !== undefined) request.set('if-match', options.ifMatch);
    if (options.headers !== undefined) request.set(options.headers);
    return options.body === undefined ? request : request.send(options.body);
  };
  return {
    id: member.id,
    role: member.role,
    email: member.email,
    accessToken,
    refreshToken,
    get: async (path, headers = {}) =>
      supertest(app.server).get(path).set('authorization', `Bearer ${accessToken}`).set(headers),
    post: (path, options) => send('post', path, options),
    put: (path, options) => send('put', path, options),
    delete: (path, options) => send('delete', path, options),
  };
}
