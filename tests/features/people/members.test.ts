import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, signInTestMember, type TestApp, testPassword } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';

describe.each(databaseKinds())('members, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const newcomer = (email: string) => ({
    name: 'New Comer',
    email,
    role: 'technician',
    password: testPassword,
  });

  it('are added by an admin, sign in, and are listed', async () => {
    const added = await test.home.admin.post('/members', { body: newcomer('new@home-firm.example') });
    expect(added.status).toBe(201);
    expect(added.headers.location).toBe(`/members/${added.body.id}`);
    expect(added.text).not.toContain('argon2');
    await signInTestMember(test.app, 'home-firm', 'new@home-firm.example');
    const listed = await test.home.dispatcher.get('/members');
    expect(listed.body.items.map((member: { email: string }) => member.email)).toContain(
      'new@home-firm.example',
    );
  });

  it('have one email in an organisation, and may have it in another as well', async () => {
    const email = 'both@firms.example';
    expect((await test.home.admin.post('/members', { body: newcomer(email) })).status).toBe(201);
    expect((await test.home.admin.post('/members', { body: newcomer(email) })).status).toBe(409);
    expect((await test.other.admin.post('/members', { body: newcomer(email) })).status).toBe(201);
  });

  it('lose every way in at once when they are made inactive', async () => {
    const added = await test.home.admin.post('/members', { body: newcomer('leaver@home-firm.example') });
    const leaver = await signInTestMember(test.app, 'home-firm', 'leaver@home-firm.example');
    const before = await test.home.admin.get(`/members/${added.body.id}`);
    const update = { name: 'New Comer', role: 'technician', active: false };
    const done = await test.home.admin.put(`/members/${added.body.id}`, {
      body: update,
      ifMatch: before.headers.etag ?? '',
    });
    expect(done.status).toBe(200);
    expect((await leaver.get('/me')).status).toBe(401);
    const refreshed = await test.request().post('/auth/refresh').send({ refreshToken: leaver.refreshToken });
    expect(refreshed.status).toBe(401);
  });

  it('act by the role they have now, not by the one in their token', async () => {
    const added = await test.home.admin.post('/members', {
      body: { ...newcomer('climber@home-firm.example'), role: 'admin' },
    });
    const climber = await signInTestMember(test.app, 'home-firm', 'climber@home-firm.example');
    const body = { name: 'New Comer', role: 'technician', active: true };
    const ifMatch = added.headers.etag ?? '';
    expect((await test.home.admin.put(`/members/${added.body.id}`, { body, ifMatch })).status).toBe(200);
    const refused = await climber.post('/members', { body: newcomer('x@home-firm.example') });
    expect(refused.status).toBe(403);
  });

  it('always include one active admin', async () => {
    const admin = test.other.admin;
    const current = await admin.get(`/members/${admin.id}`);
    const body = { name: 'Only Admin', role: 'technician', active: true };
    const refused = await admin.put(`/members/${admin.id}`, { body, ifMatch: current.headers.etag ?? '' });
    expect(refused.status).toBe(409);
    expect(refused.body.type).toBe('/problems/last-admin');
  });

  it('are changed by one of two requests that come at once, and the other is told so', async () => {
    const { admin } = test.other;
    for (let round = 0; round < 20; round += 1) {
      const ifMatch = (await admin.get(`/members/${admin.id}`)).headers.etag ?? '';
      const put = (name: string) =>
        admin.put(`/members/${admin.id}`, { body: { name, role: 'admin', active: true }, ifMatch });
      const replies = await Promise.all([put(`One ${round}`), put(`Two ${round}`)]);
      expect(replies.map(({ status }) => status).toSorted()).toEqual([200, 412]);
    }
  });

  it('get no password that is guessed first, from themselves or an admin, and are told where', async () => {
    const { admin } = test.home;
    const easy = { ...newcomer('easy@home-firm.example'), password: 'Password123!' };
    const replies = [
      await admin.post('/members', { body: easy }),
      await admin.post(`/members/${test.home.technician.id}/password`, {
        body: { password: 'home-firm2026' },
      }),
      await test.home.technician.post('/me/password', {
        body: { current: testPassword, password: 'zzzzzzzzzzzz' },
      }),
    ];
    expect(replies.map(({ status }) => status)).toEqual([400, 400, 400]);
    expect(replies.map(({ body }) => body.errors)).toMatchObject([
      [{ pointer: '/password', code: 'passwordMostUsed' }],
      [{ pointer: '/password', code: 'passwordIsName' }],
      [{ pointer: '/password', code: 'passwordRepeats' }],
    ]);
  });

  it('change their own password with the current one, which ends their other sign-ins', async () => {
    await test.home.admin.post('/members', { body: newcomer('keen@home-firm.example') });
    const keen = await signInTestMember(test.app, 'home-firm', 'keen@home-firm.example');
    const elsewhere = await signInTestMember(test.app, 'home-firm', 'keen@home-firm.example');
    const wrong = await keen.post('/me/password', {
      body: { current: 'something else', password: 'a longer new one' },
    });
    expect(wrong.status).toBe(400);
    expect(wrong.body.errors).toMatchObject([{ pointer: '/current', code: 'passwordWrong' }]);
    const right = await keen.post('/me/password', {
      body: { current: testPassword, password: 'a longer new one' },
    });
    expect(right.status).toBe(200);
    const { refreshToken } = elsewhere;
    const refreshed = await test.request().post('/auth/refresh').send({ refreshToken });
    expect(refreshed.status).toBe(401);
    expect((await keen.get('/me')).status).toBe(200);
    await expect(signInTestMember(test.app, 'home-firm', 'keen@home-firm.example')).rejects.toThrow('401');
  });
});
