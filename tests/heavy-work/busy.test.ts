import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BusyError, type HeavyWork } from '../../src/heavy-work/index.ts';
import { postForm } from '../features/evidence/form-client.ts';
import { metadataHeader, signed } from '../features/evidence/tus-client.ts';
import { heavyWorkHere, openTestApp, type TestApp, testPassword } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { openTestTicket, type TestTicket } from '../support/tickets.ts';

describe.each(databaseKinds())('where too much is asked for already, on the %s database', (kind) => {
  let test: TestApp;
  let ticket: TestTicket;
  let isBusy = false;
  beforeAll(async () => {
    const work = heavyWorkHere();
    const orBusy = <Result>(done: () => Promise<Result>): Promise<Result> =>
      isBusy ? Promise.reject(new BusyError(7)) : done();
    const heavyWork: HeavyWork = {
      ...work,
      compute: (...asked) => orBusy(() => work.compute(...asked)),
      inTurn: (...asked) => orBusy(() => work.inTurn(...asked)),
    };
    test = await openTestApp(kind, { heavyWork });
    ticket = await openTestTicket(test);
    isBusy = true;
  });
  afterAll(() => test.close());

  const busy = { status: 503, type: '/problems/server-busy', retryAfter: '7' };
  const said = ({
    status,
    headers,
    body,
  }: {
    status: number;
    headers: Record<string, string>;
    body: unknown;
  }) => ({
    status,
    type: (body as { type: string }).type,
    retryAfter: headers['retry-after'],
  });
  const log = Buffer.from('2026-03-02T19:00:00Z input 1: sync lost\n');

  it('a plan, a sign-in and a file are put off, and say for how long', async () => {
    const { technician } = test.home;
    expect(said(await technician.get(`/tickets/${ticket.ticketId}/plan`))).toEqual(busy);
    expect(said(await technician.get(`/tickets/${ticket.ticketId}/phone-plan`))).toEqual(busy);
    const signIn = { organisation: 'home-firm', email: technician.email, password: testPassword };
    expect(said(await test.request().post('/auth/sign-in').send(signIn))).toEqual(busy);
    const photo = await sharp({ create: { width: 9, height: 9, channels: 3, background: 'red' } })
      .png()
      .toBuffer();
    for (const [about, file] of [
      [{ kind: 'log' }, log],
      [{ kind: 'photo' }, photo],
    ] as const)
      expect(said(await postForm(test, technician, ticket.ticketId, { about, file }))).toEqual(busy);
  });

  it('an upload stays whole, and is evidence once it is asked after again', async () => {
    const { technician } = test.home;
    const metadata = {
      ticketId: ticket.ticketId,
      about: JSON.stringify({ kind: 'log' }),
      filename: 'a.log',
    };
    const begun = await test
      .request()
      .post('/uploads')
      .set({ ...signed(technician), 'upload-length': String(log.length) })
      .set({ 'upload-metadata': metadataHeader(metadata) });
    const address = String(begun.headers.location);
    const sent = await test
      .request()
      .patch(address)
      .set({ ...signed(technician), 'upload-offset': '0', 'content-type': 'application/offset+octet-stream' })
      .send(log);
    expect(said(sent)).toEqual(busy);
    const evidence = async () => (await technician.get(`/tickets/${ticket.ticketId}/evidence`)).body.items;
    expect(await evidence()).toEqual([]);
    isBusy = false;
    const asked = await test.request().head(address).set(signed(technician));
    expect(asked.headers['evidence-id']).toBeDefined();
    expect(await evidence()).toMatchObject([
      { id: asked.headers['evidence-id'], span: { from: '2026-03-02T19:00:00.000Z' } },
    ]);
  });
});
