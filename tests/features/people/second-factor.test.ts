import { generateKeyPairSync, randomUUID } from 'node:crypto';
import { TOTP, URI } from 'otpauth';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { NewApp, Tokens } from '../../../shared/contract/people.ts';
import { stepOf } from '../../../src/features/people/authenticator-app.ts';
import { recoverMember } from '../../../src/features/people/index.ts';
import { seal, unseal } from '../../../src/features/people/sealing.ts';
import {
  openTestApp,
  type TestApp,
  type TestMember,
  testMemberOf,
  testPassword,
} from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';

describe('codes of an authenticator app', () => {
  // RFC 6238, appendix B, the rows of SHA-1: their key, and the last six of their eight digits.
  const key = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ';
  it.each([
    [59, '287082', 1],
    [1111111109, '081804', 37037036],
    [1234567890, '005924', 41152263],
    [20000000000, '353130', 666666666],
  ])('at %d s are those of the standard', (second, code, step) => {
    expect(stepOf(key, code, new Date(second * 1000))).toBe(step);
  });

  it('are taken one step early and one late, and no further', () => {
    const at = (second: number) => stepOf(key, '287082', new Date(second * 1000));
    expect([at(29), at(89), at(90), at(-1)]).toEqual([1, 1, null, null]);
  });
});

describe('what is sealed', () => {
  const [mine, others] = [0, 1].map(() => generateKeyPairSync('ed25519').privateKey);
  it('opens for the same purpose under the same key only, and never when a bit of it is changed', () => {
    if (mine === undefined || others === undefined) throw new Error('no keys');
    const sealed = seal(mine, 'key of one', 'a secret');
    expect(unseal(mine, 'key of one', sealed)).toBe('a secret');
    expect(unseal(mine, 'key of another', sealed)).toBeNull();
    expect(unseal(others, 'key of one', sealed)).toBeNull();
    const bytes = Buffer.from(sealed, 'base64url');
    for (let at = 0; at < bytes.length; at += 1) {
      const changed = Buffer.from(bytes);
      changed.writeUInt8((bytes[at] ?? 0) ^ 1, at);
      expect(unseal(mine, 'key of one', changed.toString('base64url'))).toBeNull();
    }
    expect(unseal(mine, 'key of one', '')).toBeNull();
  });
});

describe.each(databaseKinds())('a second factor, on the %s database', (kind) => {
  let test: TestApp;
  /** The server's clock, on a step of its own in each test: a code is good once. */
  let now = new Date(Date.now() + 3_600_000);
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  beforeEach(() => later(120));
  afterAll(() => test.close());
  const later = (seconds: number) => {
    now = new Date(now.getTime() + seconds * 1000);
    test.setNow(now);
  };

  const password = testPassword;
  const signIn = (email: string, from = password) =>
    test.request().post('/auth/sign-in').send({ organisation: 'home-firm', email, password: from });
  const secondStep = (token: string, code: string) =>
    test.request().post('/auth/second-step').send({ token, code });
  const codeOf = ({ key }: NewApp, at = now): string => {
    return new TOTP({ secret: key }).generate({ timestamp: at.getTime() });
  };
  const stepTokenOf = async (email: string): Promise<string> => {
    const answer = await signIn(email);
    expect(answer.body.type).toBe('/problems/second-factor-needed');
    return answer.body.secondStep.token;
  };

  /** A member of their own for a test, signed in. */
  async function newcomer(role = 'technician'): Promise<TestMember> {
    const email = `${randomUUID()}@home-firm.example`;
    const added = await test.home.admin.post('/members', {
      body: { name: 'New Comer', email, role, password },
    });
    expect(added.status).toBe(201);
    return testMemberOf(test.app, (await signIn(email)).body);
  }
  async function turnOn(member: TestMember): Promise<{ app: NewApp; recoveryCodes: string[] }> {
    const app = (await member.post('/auth/app/new')).body as NewApp;
    const body = { password, proposal: app.proposal, code: codeOf(app) };
    const done = await member.post('/auth/app', { body });
    expect(done.status).toBe(200);
    later(60);
    return { app, recoveryCodes: done.body.recoveryCodes };
  }
  const signedInBy = async (answer: { body: Tokens; status: number }): Promise<TestMember> => {
    expect(answer.status).toBe(200);
    return testMemberOf(test.app, answer.body);
  };

  it('is asked for after the password from when a first code of the app was right', async () => {
    const member = await newcomer();
    const offered = (await member.post('/auth/app/new')).body as NewApp;
    const uri = URI.parse(offered.uri);
    expect(uri).toMatchObject({ issuer: 'The home-firm', label: member.email, digits: 6, period: 30 });
    expect((uri as TOTP).secret.base32).toBe(offered.key);
    const wrong = { password, proposal: offered.proposal, code: '000000' };
    expect((await member.post('/auth/app', { body: wrong })).body.errors[0].pointer).toBe('/code');
    expect((await signIn(member.email)).status).toBe(200);

    const { app } = await turnOn(member);
    expect((await member.get('/me/second-factors')).body).toMatchObject({
      app: { addedAt: expect.any(String) },
      recoveryCodesLeft: 8,
      isRequired: false,
    });
    const token = await stepTokenOf(member.email);
    const refused = await secondStep(token, '000000');
    expect([refused.status, refused.body.type]).toEqual([401, '/problems/second-factor-refused']);
    const back = await signedInBy(await secondStep(token, codeOf(app)));
    expect((await back.get('/me')).status).toBe(200);
    expect((await secondStep(token, codeOf(app))).status).toBe(401);
  });

  it('takes a code once, in whatever sign-in, also when it comes many times at once', async () => {
    const member = await newcomer();
    const { app } = await turnOn(member);
    const tokens = [];
    for (let count = 0; count < 6; count += 1) tokens.push(await stepTokenOf(member.email));
    const code = codeOf(app);
    const answers = await Promise.all(tokens.map((token) => secondStep(token, code)));
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
    // The one before is older than the one that was taken.
    const before = codeOf(app, new Date(now.getTime() - 30_000));
    expect((await secondStep(await stepTokenOf(member.email), before)).status).toBe(401);
  });

  it('does not outlast its time, and is of one member', async () => {
    const [one, two] = [await newcomer(), await newcomer()];
    const [first, second] = [await turnOn(one), await turnOn(two)];
    const token = await stepTokenOf(one.email);
    expect((await secondStep(token, codeOf(second.app))).status).toBe(401);
    expect((await secondStep(`${test.other.orgId}.${token.split('.')[1]}`, codeOf(first.app))).status).toBe(
      401,
    );
    later(601);
    const late = await secondStep(token, codeOf(first.app));
    expect(late.body.type).toBe('/problems/sign-in-refused');
  });

  it('may be a code for recovery, each once; new ones end the old ones', async () => {
    const member = await newcomer();
    const { recoveryCodes } = await turnOn(member);
    const [lower, other] = [
      recoveryCodes[0]?.toLowerCase().replaceAll('-', ' ') ?? '',
      recoveryCodes[1] ?? '',
    ];
    const back = await signedInBy(await secondStep(await stepTokenOf(member.email), lower));
    expect((await secondStep(await stepTokenOf(member.email), lower)).status).toBe(401);
    expect((await back.get('/me/second-factors')).body.recoveryCodesLeft).toBe(7);
    const renewed = await back.post('/auth/recovery-codes', { body: { password } });
    expect(renewed.body.recoveryCodes).toHaveLength(8);
    expect((await secondStep(await stepTokenOf(member.email), other)).status).toBe(401);
    const fresh = renewed.body.recoveryCodes[0];
    expect((await secondStep(await stepTokenOf(member.email), fresh)).status).toBe(200);
  });

  it('is not guessed by whoever knows the password, and its owner gets in by a code for recovery meanwhile', async () => {
    const member = await newcomer();
    const { app, recoveryCodes } = await turnOn(member);
    const statuses = [];
    for (let count = 0; count < 12; count += 1)
      statuses.push((await secondStep(await stepTokenOf(member.email), '000000')).status);
    expect(statuses.slice(0, 10)).toEqual(Array(10).fill(401));
    const held = await secondStep(await stepTokenOf(member.email), codeOf(app));
    expect(held.status).toBe(429);
    expect(Number(held.headers['retry-after'])).toBeGreaterThan(0);
    const token = await stepTokenOf(member.email);
    expect((await secondStep(token, recoveryCodes[0] ?? '')).status).toBe(200);
    expect((await secondStep(await stepTokenOf(member.email), codeOf(app))).status).toBe(200);
  });

  it('is changed by the password only, whose tries are counted too', async () => {
    const member = await newcomer();
    const { proposal } = (await member.post('/auth/app/new')).body as NewApp;
    const body = { password: 'not the password', proposal, code: '000000' };
    const first = await member.post('/auth/app', { body });
    expect(first.body.errors[0].pointer).toBe('/password');
    const statuses = [];
    for (let count = 0; count < 12; count += 1)
      statuses.push((await member.post('/auth/recovery-codes', { body: { password: 'wrong' } })).status);
    expect(statuses.at(-1)).toBe(429);
    const change = { current: password, password: 'another good sentence' };
    expect((await member.post('/me/password', { body: change })).status).toBe(429);
    later(900);
    expect((await member.post('/auth/recovery-codes', { body: { password } })).status).toBe(404);
    expect((await member.post('/me/password', { body: change })).status).toBe(200);
  });

  it("takes no offer of another member's, and none of long ago", async () => {
    const [one, two] = [await newcomer(), await newcomer()];
    const app = (await one.post('/auth/app/new')).body as NewApp;
    const body = () => ({ password, proposal: app.proposal, code: codeOf(app) });
    expect((await two.post('/auth/app', { body: body() })).body.errors[0].pointer).toBe('/proposal');
    expect((await one.post('/auth/app', { body: { ...body(), proposal: 'x' } })).status).toBe(400);
    later(1801);
    expect((await one.post('/auth/app', { body: body() })).body.errors[0].pointer).toBe('/proposal');
  });

  it('leaves no secret in the database in plain, nor in what writes are answered with again', async () => {
    const member = await newcomer();
    const { app, recoveryCodes } = await turnOn(member);
    const kept = await test.services.database.inTenant(
      { orgId: test.home.orgId, memberId: member.id },
      async (tx) => [
        await tx.authenticatorApp.findMany(),
        await tx.recoveryCode.findMany(),
        await tx.idempotencyRecord.findMany(),
      ],
    );
    const text = JSON.stringify(kept, (_key, value) => (typeof value === 'bigint' ? String(value) : value));
    expect(text).toContain(member.id);
    for (const secret of [
      app.key,
      ...recoveryCodes,
      ...recoveryCodes.map((code) => code.replaceAll('-', '')),
    ])
      expect(text).not.toContain(secret);
  });

  it('is turned off by its owner, or by an admin for whoever lost theirs, which ends their sign-ins', async () => {
    const member = await newcomer();
    await turnOn(member);
    const off = await member.post('/me/second-factors/app/end', { body: { password } });
    expect(off.body).toMatchObject({ app: null, recoveryCodesLeft: 0 });
    expect((await signIn(member.email)).status).toBe(200);

    await turnOn(member);
    const waiting = await stepTokenOf(member.email);
    expect((await test.home.admin.post(`/members/${member.id}/second-factors/end`)).status).toBe(200);
    expect((await secondStep(waiting, '000000')).body.type).toBe('/problems/sign-in-refused');
    expect((await member.get('/me')).status).toBe(401);
    expect((await signIn(member.email)).status).toBe(200);
  });

  it('goes with recovery on the command line', async () => {
    const member = await newcomer();
    await turnOn(member);
    const recovered = await recoverMember(test.services, {
      organisation: 'home-firm',
      email: member.email,
      makeAdmin: false,
    });
    expect((await signIn(member.email, recovered?.password)).status).toBe(200);
  });

  it('is wanted of admins where the organisation says so: before that they see to it, and do nothing else', async () => {
    const [admin, technician] = [await newcomer('admin'), await newcomer()];
    const { app } = await turnOn(admin);
    const sure = await signedInBy(await secondStep(await stepTokenOf(admin.email), codeOf(app)));
    const { body, headers } = await sure.get('/organisation');
    const settings = { ...body.settings, adminsNeedSecondFactor: true };
    const ifMatch = headers.etag ?? '';
    const saved = await sure.put('/organisation', { body: { name: body.name, settings }, ifMatch });
    expect(saved.status).toBe(200);

    const bare = await newcomerBy(sure, 'admin');
    for (const path of ['/tickets', '/members', '/export', '/events'])
      expect((await bare.get(path)).body.type).toBe('/problems/second-factor-missing');
    expect((await bare.post('/sites', { body: { client: 'One', address: 'Two' } })).status).toBe(403);
    expect((await technician.get('/tickets')).status).toBe(200);
    expect((await bare.get('/me/second-factors')).body).toMatchObject({ app: null, isRequired: true });
    await turnOn(bare);
    expect((await bare.get('/members')).status).toBe(200);
    const off = await bare.post('/me/second-factors/app/end', { body: { password } });
    expect(off.body.type).toBe('/problems/second-factor-missing');
  });

  async function newcomerBy(admin: TestMember, role: string): Promise<TestMember> {
    const email = `${randomUUID()}@home-firm.example`;
    await admin.post('/members', { body: { name: 'New Comer', email, role, password } });
    return testMemberOf(test.app, (await signIn(email)).body);
  }
});
