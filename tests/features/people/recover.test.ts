import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recoverMember } from '../../../src/features/people/index.ts';
import { openTestApp, type TestApp, testPassword } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';

describe.each(databaseKinds())('recovering a member, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const signIn = (email: string, password: string) =>
    test.request().post('/auth/sign-in').send({ organisation: 'home-firm', email, password });

  it('gives them another password, makes them active and an admin, and ends their sign-ins', async () => {
    const { admin, support } = test.home;
    const current = await admin.get(`/members/${support.id}`);
    const inactive = { name: 'Second Line', role: 'support', active: false };
    const ifMatch = current.headers.etag ?? '';
    expect((await admin.put(`/members/${support.id}`, { body: inactive, ifMatch })).status).toBe(200);

    const asked = { organisation: 'Home-Firm', email: support.email };
    const recovered = await recoverMember(test.services, { ...asked, makeAdmin: true });
    expect(recovered?.member).toMatchObject({ id: support.id, role: 'admin', active: true });
    expect((await signIn(support.email, testPassword)).status).toBe(401);
    const { body, status } = await signIn(support.email, recovered?.password ?? '');
    expect(status).toBe(200);
    expect(body.member.role).toBe('admin');
    expect((await support.get('/me')).status).toBe(401);

    const next = await recoverMember(test.services, { ...asked, makeAdmin: false });
    expect(next?.member.role).toBe('admin');
    expect(next?.password).not.toBe(recovered?.password);
  });

  it('finds nobody elsewhere, and changes nothing there', async () => {
    const stranger = { organisation: 'home-firm', email: test.other.admin.email, makeAdmin: true };
    expect(await recoverMember(test.services, stranger)).toBeNull();
    expect(await recoverMember(test.services, { ...stranger, organisation: 'no-firm' })).toBeNull();
    expect((await test.other.admin.get('/me')).status).toBe(200);
  });
});
