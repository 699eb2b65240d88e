import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import supertest from 'supertest';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Session, Tokens } from '../../../shared/contract/people.ts';
import { createApp } from '../../../src/app.ts';
import type { TrustedProxies } from '../../../src/config.ts';
import { createLogger } from '../../../src/http/logging.ts';
import {
  openTestApp,
  signInTestMember,
  type TestApp,
  type TestMember,
  testMemberOf,
  testPassword,
} from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { openTestTicket } from '../../support/tickets.ts';

describe.each(databaseKinds())('signing in, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const signIn = (email: string, password = testPassword, organisation = 'home-firm') =>
    test.request().post('/auth/sign-in').send({ organisation, email, password });
  const refresh = (refreshToken: string) => test.request().post('/auth/refresh').send({ refreshToken });

  it('gives tokens that open the API, whatever the case of handle and email', async () => {
    const answer = await signIn('Dispatcher@Home-Firm.example', testPassword, 'Home-Firm');
    expect(answer.status).toBe(200);
    expect(answer.body).toMatchObject({
      expiresInS: 900,
      member: { role: 'dispatcher' },
      organisation: { handle: 'home-firm' },
    });
    expect(answer.headers['cache-control']).toBe('no-store');
    const me = await test.request().get('/me').set('authorization', `Bearer ${answer.body.accessToken}`);
    expect(me.status).toBe(200);
    expect(me.body.member.email).toBe('dispatcher@home-firm.example');
  });

  it('refuses a wrong password, an unknown email and an unknown organisation in the same words', async () => {
    const answers = await Promise.all([
      signIn('support@home-firm.example', 'not the password'),
      signIn('nobody@home-firm.example'),
      signIn('support@home-firm.example', testPassword, 'no-such-firm'),
      signIn('support@other-firm.example'),
    ]);
    for (const answer of answers) {
      expect(answer.status).toBe(401);
      expect(answer.body.type).toBe('/problems/sign-in-refused');
      expect({ ...answer.body, instance: '' }).toEqual({ ...answers[0]?.body, instance: '' });
    }
  });

  it('refuses requests without a token, with a broken one, and with an unsigned one', async () => {
    const forged = `${Buffer.from('{"alg":"none"}').toString('base64url')}.${Buffer.from(
      JSON.stringify({ sub: test.home.admin.id, org: test.home.orgId, role: 'admin' }),
    ).toString('base64url')}.`;
    for (const header of [
      '',
      'Bearer nonsense',
      `Bearer ${forged}`,
      `Bearer ${test.home.admin.refreshToken}`,
    ]) {
      const answer = await test.request().get('/members').set('authorization', header);
      expect(answer.status).toBe(401);
      expect(answer.body.type).toBe('/problems/sign-in-needed');
    }
  });

  it('rotates refresh tokens; the use of an old one ends the whole family', async () => {
    const first = (await signIn('technician@home-firm.example')).body.refreshToken;
    const second = await refresh(first);
    expect(second.status).toBe(200);
    const third = await refresh(second.body.refreshToken);
    expect(third.status).toBe(200);

    const reused = await refresh(first);
    expect(reused.status).toBe(401);
    expect(reused.body.type).toBe('/problems/refresh-refused');
    expect((await refresh(third.body.refreshToken)).status).toBe(401);
  });

  it('takes a refresh token again as long as nothing shows that its reply arrived', async () => {
    const first = (await signIn('technician@home-firm.example')).body.refreshToken;
    const lost = await refresh(first);
    const arrived = await refresh(first);
    expect([lost.status, arrived.status]).toEqual([200, 200]);
    const next = await refresh(arrived.body.refreshToken);
    expect(next.status).toBe(200);
    const me = await test.request().get('/me').set('authorization', `Bearer ${next.body.accessToken}`);
    expect(me.status).toBe(200);
    expect((await refresh(first)).status).toBe(401);
  });

  it('ends the family when two go on from the same token', async () => {
    const first = (await signIn('technician@home-firm.example')).body.refreshToken;
    const [thief, owner] = [await refresh(first), await refresh(first)];
    const thiefsNext = await refresh(thief.body.refreshToken);
    expect(thiefsNext.status).toBe(200);
    expect((await refresh(owner.body.refreshToken)).status).toBe(401);
    expect((await refresh(thiefsNext.body.refreshToken)).status).toBe(401);
  });

  it('goes on from one token only when two are used at once', async () => {
    const first = (await signIn('technician@home-firm.example')).body.refreshToken;
    const replies = await Promise.all([refresh(first), refresh(first), refresh(first)]);
    expect(replies.map(({ status }) => status)).toEqual([200, 200, 200]);
    const used = await Promise.all(replies.map(({ body }) => refresh(body.refreshToken)));
    expect(used.map(({ status }) => status).toSorted()).toEqual([200, 401, 401]);
  });

  it('does not give new tokens for the same one for ever', async () => {
    const first = (await signIn('technician@home-firm.example')).body.refreshToken;
    const statuses = [];
    for (let count = 0; count < 30; count += 1) statuses.push((await refresh(first)).status);
    expect(statuses[1]).toBe(200);
    expect(statuses.at(-1)).toBe(401);
  });

  it('ends one sign-in and leaves the others of the same member', async () => {
    const here = (await signIn('technician@home-firm.example')).body.refreshToken;
    const elsewhere = (await signIn('technician@home-firm.example')).body.refreshToken;
    expect((await test.request().post('/auth/sign-out').send({ refreshToken: here })).status).toBe(204);
    expect((await refresh(here)).status).toBe(401);
    expect((await refresh(elsewhere)).status).toBe(200);
  });

  it('refuses a refresh token after its time', async () => {
    const token = (await signIn('technician@home-firm.example')).body.refreshToken;
    test.setNow(new Date(Date.now() + 31 * 86_400_000));
    expect((await refresh(token)).status).toBe(401);
    test.setNow(null);
  });

  it('takes a lost refresh token again for a minute only', async () => {
    const first = (await signIn('technician@home-firm.example')).body.refreshToken;
    const lost = await refresh(first);
    test.setNow(new Date(Date.now() + 61_000));
    expect((await refresh(first)).status).toBe(401);
    expect((await refresh(lost.body.refreshToken)).status).toBe(401);
    test.setNow(null);
  });

  describe('sessions', () => {
    const email = 'secondtechnician@home-firm.example';
    const get = (token: string, path: string) =>
      test.request().get(path).set('authorization', `Bearer ${token}`);
    const post = (token: string, path: string, body: object = {}) =>
      test
        .request()
        .post(path)
        .set('authorization', `Bearer ${token}`)
        .set('idempotency-key', randomUUID())
        .send(body);
    const signInFrom = async (device: string, password = testPassword): Promise<Tokens> => {
      const answer = await signIn(email, password).set('user-agent', device);
      expect(answer.status).toBe(200);
      return answer.body;
    };

    it('are listed with the one that asks first, and end one by one, at once and with all their tokens', async () => {
      const phone = await signInFrom('A phone');
      const desk = await signInFrom('A desk');
      const listed = await get(phone.accessToken, '/me/sessions');
      const { items } = listed.body as { items: Session[] };
      expect(items[0]).toMatchObject({ device: 'A phone', isThis: true });
      const other = items.find(({ device }) => device === 'A desk');
      expect(other?.isThis).toBe(false);

      const left = await post(phone.accessToken, `/me/sessions/${other?.id}/end`);
      expect(left.status).toBe(200);
      expect(left.body.items.map(({ id }: Session) => id)).not.toContain(other?.id);
      expect((await get(desk.accessToken, '/me')).body.type).toBe('/problems/sign-in-needed');
      expect((await refresh(desk.refreshToken)).status).toBe(401);
      expect((await get(phone.accessToken, '/me')).status).toBe(200);
    });

    it("are nobody else's to end, nor to see", async () => {
      const mine = await signInFrom('Mine');
      const { items } = (await get(mine.accessToken, '/me/sessions')).body;
      for (const member of [test.home.admin, test.other.technician]) {
        expect((await member.post(`/me/sessions/${items[0].id}/end`)).status).toBe(404);
        const seen = (await member.get('/me/sessions')).body.items.map(({ id }: Session) => id);
        expect(seen).not.toContain(items[0].id);
      }
      expect((await get(mine.accessToken, '/me')).status).toBe(200);
    });

    it('end everywhere else in one go', async () => {
      const [here, there, yonder] = [await signInFrom('1'), await signInFrom('2'), await signInFrom('3')];
      const left = await post(here.accessToken, '/me/sessions/end-others');
      expect(left.body.items).toHaveLength(1);
      expect((await get(there.accessToken, '/me')).status).toBe(401);
      expect((await refresh(yonder.refreshToken)).status).toBe(401);
      expect((await refresh(here.refreshToken)).status).toBe(200);
    });

    it('end with signing out, access token and all', async () => {
      const { accessToken, refreshToken } = await signInFrom('A phone');
      await test.request().post('/auth/sign-out').send({ refreshToken });
      expect((await get(accessToken, '/me')).status).toBe(401);
    });

    it("end with a new password: one's own change keeps the caller, another's keeps none", async () => {
      const [here, there] = [await signInFrom('1'), await signInFrom('2')];
      const own = { current: testPassword, password: 'another good sentence' };
      expect((await post(here.accessToken, '/me/password', own)).status).toBe(200);
      expect((await get(here.accessToken, '/me')).status).toBe(200);
      expect((await get(there.accessToken, '/me')).status).toBe(401);
      const { id } = (await get(here.accessToken, '/me')).body.member;
      const reset = { body: { password: testPassword } };
      expect((await test.home.admin.post(`/members/${id}/password`, reset)).status).toBe(200);
      expect((await get(here.accessToken, '/me')).status).toBe(401);
      expect((await refresh(here.refreshToken)).status).toBe(401);
    });
  });
});

describe.each(databaseKinds())('another token secret, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  it('signs from the next start on, and what the one before signed is taken until it is dropped', async () => {
    const { technician } = test.home;
    const { services } = test;
    const { ticketId } = await openTestTicket(test);
    const note = { body: { type: 'note', text: 'It hums.' }, key: randomUUID() };
    const first = await technician.post(`/tickets/${ticketId}/commands`, note);
    const diaryPath = `/tickets/${ticketId}/diaries`;
    expect((await test.home.dispatcher.post(diaryPath, { body: { days: 3 } })).status).toBe(201);
    const diaries = await test.home.dispatcher.get(diaryPath);
    const [old] = services.config.tokenSecrets;
    const fresh = 'another secret, which is long enough as well';
    const startedWith = (...tokenSecrets: [string, ...string[]]) =>
      createApp({ ...services, config: { ...services.config, tokenSecrets } }, createLogger('silent'));

    const rotated = await startedWith(fresh, old);
    const dropped = await startedWith(fresh);
    try {
      const owner = (app: FastifyInstance, from: TestMember) =>
        testMemberOf(app, { ...from, member: { id: from.id, role: from.role, email: from.email } });
      const again = await owner(rotated, technician).post(`/tickets/${ticketId}/commands`, note);
      expect(again.headers['idempotency-replayed']).toBe('true');
      expect(first.status).toBe(200);
      expect(again.body).toEqual((await technician.get(`/tickets/${ticketId}`)).body);
      expect((await owner(rotated, test.home.dispatcher).get(diaryPath)).body).toEqual(diaries.body);
      const newcomer = await signInTestMember(rotated, 'home-firm', technician.email);
      const kidOf = ({ accessToken }: TestMember) =>
        JSON.parse(String(Buffer.from(accessToken.split('.', 1)[0] ?? '', 'base64url'))).kid;
      expect(kidOf(newcomer)).not.toBe(kidOf(technician));

      expect((await owner(dropped, technician).get('/me')).status).toBe(401);
      expect((await owner(dropped, newcomer).get('/me')).status).toBe(200);
      expect((await owner(test.app, newcomer).get('/me')).status).toBe(401);
      const { refreshToken } = technician;
      expect((await supertest(dropped.server).post('/auth/refresh').send({ refreshToken })).status).toBe(200);
    } finally {
      await rotated.close();
      await dropped.close();
    }
  });
});

describe.each(databaseKinds())('guessing passwords, on the %s database', (kind) => {
  let test: TestApp;
  const open = async (trustProxy: TrustedProxies) => {
    test = await openTestApp(kind, { trustProxy });
  };
  afterEach(() => test.close());

  type Try = { email?: string; password?: string; organisation?: string; from?: string };
  const attempt = ({ email = 'technician@home-firm.example', password = 'wrong', organisation, from }: Try) =>
    test
      .request()
      .post('/auth/sign-in')
      .set(from === undefined ? {} : { 'x-forwarded-for': from })
      .send({ organisation: organisation ?? 'home-firm', email, password });
  const statuses = async (tries: Try[]): Promise<number[]> => {
    const all = [];
    for (const each of tries) all.push((await attempt(each)).status);
    return all;
  };
  const times = (count: number, of: Try): Try[] => Array.from({ length: count }, () => of);

  it('has to wait longer and longer from one address; the owner gets in from elsewhere', async () => {
    await open(1);
    const guesser = { from: '192.0.2.7' };
    expect(await statuses(times(5, guesser))).toEqual([401, 401, 401, 401, 401]);
    const held = await attempt({ ...guesser, password: testPassword });
    expect(held.status).toBe(429);
    expect(held.body.type).toBe('/problems/too-many-requests');
    const firstWaitS = Number(held.headers['retry-after']);
    expect(firstWaitS).toBeGreaterThan(0);
    expect((await attempt({ from: '198.51.100.9', password: testPassword })).status).toBe(200);

    const later = Date.now() + firstWaitS * 1000;
    test.setNow(new Date(later));
    expect((await attempt(guesser)).status).toBe(401);
    const next = await attempt(guesser);
    expect(next.status).toBe(429);
    expect(Number(next.headers['retry-after'])).toBeGreaterThan(firstWaitS);
    test.setNow(new Date(later + Number(next.headers['retry-after']) * 1000));
    expect((await attempt({ ...guesser, password: testPassword })).status).toBe(200);
    expect(await statuses(times(4, guesser))).toEqual([401, 401, 401, 401]);
  });

  it('waits alike for accounts that do not exist, and for organisations', async () => {
    await open(1);
    const absent = [
      { email: 'nobody@home-firm.example', from: '192.0.2.8' },
      { organisation: 'no-such-firm', from: '192.0.2.9' },
      { from: '192.0.2.10' },
    ];
    const replies = [];
    for (const each of absent) {
      await statuses(times(5, each));
      const { status, body } = await attempt(each);
      replies.push({ status, ...body, instance: '' });
    }
    expect(replies[0]?.status).toBe(429);
    expect(replies[1]).toEqual(replies[0]);
    expect(replies[2]).toEqual(replies[0]);
  });

  it('is counted before passwords are compared, however many come at once', async () => {
    await open(1);
    const answers = await Promise.all(times(20, { from: '192.0.2.11' }).map((each) => attempt(each)));
    expect(answers.filter(({ status }) => status === 401)).toHaveLength(5);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(15);
  });

  it.each<[string, TrustedProxies]>([
    ['no proxy is trusted', false],
    ['one proxy stands in front', 1],
    ['proxies at these addresses do', ['127.0.0.0/8', '::1']],
  ])('is not made easier by a header, where %s', async (_, trustProxy) => {
    await open(trustProxy);
    const forged = Array.from({ length: 12 }, (_each, at) => ({ from: `203.0.113.${at}, 192.0.2.12` }));
    expect((await statuses(forged)).filter((status) => status === 401)).toHaveLength(5);
  });

  it('counts an IPv6 subscriber as one, whichever of their addresses they use', async () => {
    await open(1);
    const tries = Array.from({ length: 8 }, (_, at) => ({ from: `2001:db8:1:2::${at + 1}` }));
    expect((await statuses(tries)).filter((status) => status === 401)).toHaveLength(5);
    expect((await attempt({ from: '2001:db8:1:3::1' })).status).toBe(401);
  });

  it('is held back over many accounts too, and an office that signs in is not', {
    timeout: 240_000,
  }, async () => {
    await open(1);
    const over = Array.from({ length: 102 }, (_, at) => ({
      email: `m${at}@home-firm.example`,
      from: '192.0.2.20',
    }));
    expect((await statuses(over)).slice(-4)).toEqual([401, 401, 429, 429]);
    const office = times(102, { password: testPassword, from: '192.0.2.21' });
    expect(new Set(await statuses(office))).toEqual(new Set([200]));
  });
});
