import { randomUUID } from 'node:crypto';
import { TOTP } from 'otpauth';
import sharp from 'sharp';
import type { NewApp } from '../../shared/contract/people.ts';
import type { TicketEvent } from '../../shared/contract/ticket.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { postForm } from '../features/evidence/form-client.ts';
import { metadataHeader, signed } from '../features/evidence/tus-client.ts';
import { everythingIn } from '../support/everything.ts';
import { guardedRoutes, type Ids, pathWith } from '../support/routes.ts';
import {
  type Send,
  type TestApp,
  type TestMember,
  type TestReply,
  testMemberOf,
  testPassword,
} from '../support/test-app.ts';
import { openTestTicket } from '../support/tickets.ts';

/** Takes in what came of a request of an operation, named as in the document: `POST /sites/{id}/chains`. */
export type Take = (line: string, reply: TestReply) => void;

const password = testPassword;

/**
 * Asks every route for what it is there for, one after the other, so that each is known to succeed.
 * @returns ids of what there is now, among them a member whom nobody signs in as
 */
export async function reachEveryRoute(test: TestApp, take: Take): Promise<Ids> {
  const ids = await everythingIn(test);
  const { admin } = test.home;
  const spare = await admin.post('/members', {
    body: { name: 'Spare', email: 'spare@home-firm.example', role: 'technician', password },
  });
  take('POST /members', spare);
  await reachAccounts(test, take);
  await reachFirm(test, { ...ids, members: spare.body.id }, take);
  await reachTickets(test, ids, take);
  await reachEvidence(test, ids, take);
  await reachPackets(test, ids, take);
  await reachReads(test, ids, take);
  return { ...ids, members: spare.body.id };
}

/** Signing in, sessions, passwords and second factors, of a member of their own. */
async function reachAccounts(test: TestApp, take: Take): Promise<void> {
  const { admin } = test.home;
  const post = (path: string, body: object) => test.request().post(path).send(body);
  const email = 'account@home-firm.example';
  await admin.post('/members', { body: { name: 'An Account', email, role: 'technician', password } });
  const account = { organisation: 'home-firm', email, password };
  const signedIn = await post('/auth/sign-in', account);
  take('POST /auth/sign-in', signedIn);
  const member = testMemberOf(test.app, signedIn.body);
  const did = async (line: string, body?: object): Promise<TestReply> => {
    const reply = await member.post(line.split(' ')[1] ?? '', body === undefined ? {} : { body });
    take(line, reply);
    return reply;
  };
  const other = await post('/auth/sign-in', account);
  const refreshed = await post('/auth/refresh', { refreshToken: other.body.refreshToken });
  take('POST /auth/refresh', refreshed);
  const { items } = (await member.get('/me/sessions')).body;
  take('POST /me/sessions/{id}/end', await member.post(`/me/sessions/${items[1].id}/end`));
  await did('POST /me/sessions/end-others');
  await did('POST /me/password', { current: password, password });
  const app = (await did('POST /auth/app/new')).body as NewApp;
  const code = (at: number) => new TOTP({ secret: app.key }).generate({ timestamp: at });
  await did('POST /auth/app', { password, proposal: app.proposal, code: code(Date.now()) });
  await did('POST /auth/recovery-codes', { password });
  const { token } = (await post('/auth/sign-in', account)).body.secondStep;
  take('POST /auth/second-step', await post('/auth/second-step', { token, code: code(Date.now() + 30_000) }));
  await did('POST /me/second-factors/app/end', { password });
  take('POST /auth/sign-out', await post('/auth/sign-out', { refreshToken: signedIn.body.refreshToken }));
}

/** Members, settings, firmware levels, sites and chains. */
async function reachFirm(test: TestApp, ids: Ids, take: Take): Promise<void> {
  const { admin, dispatcher } = test.home;
  const did = didOf(admin, take);
  const member = ids.members;
  await did('PUT /members/{id}', member, { body: { name: 'Spare', role: 'technician', active: true } });
  await did('POST /members/{id}/password', member, { body: { password } });
  await did('POST /members/{id}/second-factors/end', member);
  await did('PUT /organisation', '', { body: { name: 'The home-firm', settings: {} } });
  const level = await did('POST /firmware-levels', '', { body: { model: 'Quellor R-10', minimum: '1.8' } });
  await did('PUT /firmware-levels/{id}', level.body.id, { body: { model: 'Quellor R-10', minimum: '1.9' } });
  await did('DELETE /firmware-levels/{id}', level.body.id);
  const didAtDesk = didOf(dispatcher, take);
  const site = { client: 'Family Overwell', address: '2 Mill Lane' };
  const { id } = (await didAtDesk('POST /sites', '', { body: site })).body;
  await didAtDesk('PUT /sites/{id}', id, { body: site });
  const chain = await didAtDesk('POST /sites/{id}/chains', id, { body: homeCinema() });
  await didAtDesk('PUT /chains/{id}', chain.body.id, { body: homeCinema() });
}

/** Tickets, diaries, and a text that is erased. */
async function reachTickets(test: TestApp, { sites, chains }: Ids, take: Take): Promise<void> {
  const { admin, dispatcher, technician } = test.home;
  const did = didOf(dispatcher, take);
  const intake = { symptom: { kind: 'dropOuts', perHour: 3 } };
  const older = (await dispatcher.get(`/tickets?chainId=${chains}`)).body.items;
  const seenDuplicates = older.map(({ id }: { id: string }) => id);
  const opened = await did('POST /tickets', '', {
    body: { siteId: sites, chainId: chains, intake, seenDuplicates },
  });
  const { id } = opened.body;
  await did('PUT /tickets/{id}', id, { body: { priority: 'low', assigneeId: null, visitAt: null, intake } });
  await did('POST /tickets/{id}/assignment', id, { body: { assigneeId: technician.id } });
  take('POST /tickets/{id}/take-over', await test.home.secondTechnician.post(`/tickets/${id}/take-over`));
  await did('POST /tickets/{id}/commands', id, { body: { type: 'note', text: 'Names a neighbour.' } });
  const { items } = (await admin.get(`/tickets/${id}/log`)).body as { items: TicketEvent[] };
  const event = items.find(({ type }) => type === 'note')?.sequence ?? 0;
  const erasure = { event, pointer: '/text', reason: 'Asked for by whom it names.' };
  await didOf(admin, take)('POST /tickets/{id}/erasures', id, { body: erasure });
  const diary = await did('POST /tickets/{id}/diaries', id, { body: { days: 7 } });
  await did('POST /diaries/{id}/close', diary.body.id);
}

/** A photo by a form, a reading, and an upload that resumes. */
async function reachEvidence(test: TestApp, ids: Ids, take: Take): Promise<void> {
  const { technician } = test.home;
  const { ticketId } = await openTestTicket(test, test.home);
  const picture = sharp({ create: { width: 64, height: 48, channels: 3, background: 'red' } });
  const form = { about: { kind: 'photo' }, file: await picture.jpeg().toBuffer(), name: 'rack.jpg' };
  const photo = await postForm(test, technician, ticketId, form);
  take('POST /tickets/{id}/evidence', photo);
  for (const part of ['content', 'thumbnail'])
    take(`GET /evidence/{id}/${part}`, await technician.get(`/evidence/${photo.body.id}/${part}`));
  const did = didOf(technician, take);
  await did('POST /tickets/{id}/readings', ticketId, { body: { reading: { kind: 'note', text: 'Hums.' } } });
  await did('POST /evidence/{id}/withdraw', photo.body.id, { body: { reason: 'Not of this house.' } });

  const about = JSON.stringify({ kind: 'log' });
  const begun = async () => {
    const headers = {
      ...signed(technician),
      'upload-length': '5',
      'upload-metadata': metadataHeader({ ticketId, about, filename: 'a.log' }),
    };
    const reply = await test.request().post('/uploads').set(headers);
    take('POST /uploads', reply);
    return reply.headers.location ?? '';
  };
  const one = await begun();
  take('HEAD /uploads/{id}', await test.request().head(one).set(signed(technician)));
  const bytes = { 'upload-offset': '0', 'content-type': 'application/offset+octet-stream' };
  const sent = await test
    .request()
    .patch(one)
    .set({ ...signed(technician), ...bytes })
    .send(Buffer.from('12345'));
  take('PATCH /uploads/{id}', sent);
  take(
    'DELETE /uploads/{id}',
    await test
      .request()
      .delete(await begun())
      .set(signed(technician)),
  );
  take('OPTIONS /uploads', await test.request().options('/uploads'));
  take('GET /evidence/{id}', await technician.get(`/evidence/${ids.evidence}`));
}

async function reachPackets(test: TestApp, { packets }: Ids, take: Take): Promise<void> {
  const reader = test.other.support;
  const did = didOf(test.home.support, take);
  const grant = await did('POST /packets/{id}/grants', packets, { body: { memberAddress: reader.id } });
  take('GET /granted-packets', await reader.get('/granted-packets'));
  take('GET /packets/{id}/download', await reader.get(`/packets/${packets}/download`));
  await did('POST /grants/{id}/revoke', grant.body.id);
}

/** What is read by an admin, or by second line where that alone may. */
async function reachReads(test: TestApp, ids: Ids, take: Take): Promise<void> {
  const { admin, support } = test.home;
  for (const row of guardedRoutes.filter(({ method }) => method === 'get')) {
    if (/thumbnail|content/.test(row.path)) continue;
    const reader = row.roles.includes('admin') ? admin : support;
    take(`GET ${row.path}`, await reader.get(pathWith(row, ids)));
  }
  for (const path of ['/signing-key', '/healthz', '/readyz'])
    take(`GET ${path}`, await test.request().get(path));
}

/** Sends writes of one member, each named as in the document, with the id that its path takes. */
const didOf =
  (member: TestMember, take: Take) =>
  async (line: string, id: string, options: Send = {}): Promise<TestReply> => {
    const [method = '', path = ''] = line.split(' ');
    const send = member[method.toLowerCase() as 'post' | 'put' | 'delete'];
    const reply = await send(path.replace('{id}', id), { key: randomUUID(), ifMatch: '*', ...options });
    take(line, reply);
    return reply;
  };
