import { randomUUID } from 'node:crypto';
import { setTimeout } from 'node:timers/promises';
import type { FastifyInstance, InjectOptions } from 'fastify';
import type { Problem } from '../shared/contract/problem.ts';
import type { Ticket } from '../shared/contract/ticket.ts';
import { demoPassword } from './firm.ts';

export type Reply<Body> = { status: number; body: Body; etag: string | null };
type Send = { method: string; body?: unknown; form?: FormData; ifMatch?: string | null };

/** A signed-in member, talking to the API over HTTP like any other client. */
export type Session = {
  readonly name: string;
  get<Body>(path: string): Promise<Reply<Body>>;
  post<Body>(path: string, body: unknown): Promise<Reply<Body>>;
  put<Body>(path: string, body: unknown, ifMatch: string | null): Promise<Reply<Body>>;
  upload<Body>(path: string, form: FormData): Promise<Reply<Body>>;
  download(path: string): Promise<ReadableStream<Uint8Array>>;
  /** Sends a ticket command that has to be accepted. */
  command(ticketId: string, command: { type: string } & Record<string, unknown>): Promise<Ticket>;
  /** Sends a ticket command that has to be refused with that kind of problem. */
  refusedCommand(
    ticketId: string,
    kind: string,
    command: { type: string } & Record<string, unknown>,
  ): Promise<Problem>;
};

/** A server that is asked for much says when to ask again; so often that is done. */
const mostTries = 10;

/** How requests reach the server: `overHttp` an address, or `inside` a server that does not listen yet. */
export type Transport = (path: string, init: RequestInit) => Promise<Response>;
export const overHttp =
  (base: string): Transport =>
  (path, init) =>
    fetch(`${base}${path}`, init);
export const inside =
  (app: FastifyInstance): Transport =>
  async (path, { method = 'GET', headers = {}, body }) => {
    const request = { method, url: path, headers, ...(typeof body === 'string' ? { payload: body } : {}) };
    const answer = await app.inject(request as InjectOptions);
    const etag = answer.headers.etag;
    return new Response(answer.payload, {
      status: answer.statusCode,
      headers: typeof etag === 'string' ? { etag } : {},
    });
  };

/** The body of a reply, which has to have that status. */
export function expectStatus<Body>(reply: Reply<Body>, status: number): Body {
  if (reply.status !== status) {
    throw new Error(`expected status ${status}, got ${reply.status}: ${JSON.stringify(reply.body)}`);
  }
  return reply.body;
}

export async function signIn(transport: Transport, organisation: string, email: string): Promise<Session> {
  const answer = await transport('/auth/sign-in', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ organisation, email, password: demoPassword }),
  });
  const reply = { status: answer.status, body: await answer.json(), etag: null };
  const tokens = expectStatus(reply, 200) as { accessToken: string; member: { name: string } };
  return sessionOf(transport, tokens.accessToken, tokens.member.name);
}

function sessionOf(transport: Transport, accessToken: string, name: string): Session {
  const authorization = `Bearer ${accessToken}`;
  async function send<Body>(path: string, { method, body, form, ifMatch }: Send): Promise<Reply<Body>> {
    const headers: Record<string, string> = { authorization };
    if (method !== 'GET') headers['idempotency-key'] = randomUUID();
    if (body !== undefined) headers['content-type'] = 'application/json';
    if (ifMatch) headers['if-match'] = ifMatch;
    const init = { method, headers, body: form ?? (body === undefined ? null : JSON.stringify(body)) };
    let answer = await transport(path, init);
    for (let again = 0; answer.status === 503 && again < mostTries; again += 1) {
      await setTimeout(1000 * Math.max(1, Number(answer.headers.get('retry-after'))));
      answer = await transport(path, init);
    }
    return { status: answer.status, body: (await answer.json()) as Body, etag: answer.headers.get('etag') };
  }
  const post = <Body>(path: string, body: unknown) => send<Body>(path, { method: 'POST', body });
  return {
    name,
    post,
    get: (path) => send(path, { method: 'GET' }),
    put: (path, body, ifMatch) => send(path, { method: 'PUT', body, ifMatch }),
    upload: (path, form) => send(path, { method: 'POST', form }),
    download: async (path) => {
      const answer = await transport(path, { method: 'GET', headers: { authorization } });
      if (!answer.ok || answer.body === null) throw new Error(`${path} answered ${answer.status}`);
      return answer.body;
    },
    command: async (ticketId, command) =>
      expectStatus(await post<Ticket>(`/tickets/${ticketId}/commands`, command), 200),
    refusedCommand: async (ticketId, kind, command) => {
      const { body } = await post<Problem>(`/tickets/${ticketId}/commands`, command);
      if (body.type !== `/problems/${kind}`) throw new Error(`expected ${kind}, got ${JSON.stringify(body)}`);
      return body;
    },
  };
}
