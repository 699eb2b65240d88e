import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp, testPassword } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';

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

  it('locks an account for a quarter of an hour after five wrong tries, also for the right password', async () => {
    const email = 'secondtechnician@home-firm.example';
    for (let attempt = 0; attempt < 5; attempt += 1)
      expect((await signIn(email, 'wrong password')).status).toBe(401);
    expect((await signIn(email)).status).toBe(401);
    test.setNow(new Date(Date.now() + 16 * 60_000));
    expect((await signIn(email)).status).toBe(200);
    test.setNow(null);
  });
});

describe('many sign-ins', () => {
  it('are held back per address and account', async () => {
    const test = await openTestApp('embedded', { signInPerMin: 14 });
    const attempt = (email: string) =>
      test
        .request()
        .post('/auth/sign-in')
        .send({ organisation: 'home-firm', email, password: 'wrong password' });
    for (let count = 0; count < 14; count += 1)
      expect((await attempt('nobody@home-firm.example')).status).toBe(401);
    const held = await attempt('nobody@home-firm.example');
    expect(held.status).toBe(429);
    expect(held.body.type).toBe('/problems/too-many-requests');
    expect(Number(held.headers['retry-after'])).toBeGreaterThan(0);
    expect((await attempt('somebody@home-firm.example')).status).toBe(401);
    await test.close();
  });
});
