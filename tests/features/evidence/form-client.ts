import { randomUUID } from 'node:crypto';
import type { Test } from 'supertest';
import type { TestApp, TestMember, TestReply } from '../../support/test-app.ts';

export type Form = {
  /** What goes into the field `about`: a text as it is, anything else as JSON. */
  about?: unknown;
  file?: Buffer;
  name?: string;
  key?: string;
  fileFirst?: boolean;
};

/** Sends multipart/form-data to a ticket. */
export async function postForm(
  { request }: TestApp,
  member: TestMember,
  ticketId: string,
  { about, file, name = 'file.bin', key = randomUUID(), fileFirst = false }: Form,
): Promise<TestReply> {
  const sending = request()
    .post(`/tickets/${ticketId}/evidence`)
    .set({ authorization: `Bearer ${member.accessToken}`, 'idempotency-key': key });
  const field = () => {
    if (about !== undefined)
      sending.field('about', typeof about === 'string' ? about : JSON.stringify(about));
  };
  if (!fileFirst) field();
  if (file !== undefined) sending.attach('file', file, name);
  if (fileFirst) field();
  return sending;
}

/** Gets bytes; `body` of the reply is a Buffer. */
export const getBytes = (
  { request }: TestApp,
  member: TestMember,
  path: string,
  headers: Record<string, string> = {},
): Test =>
  request()
    .get(path)
    .set({ authorization: `Bearer ${member.accessToken}`, ...headers })
    .buffer(true)
    .parse((response, done) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => done(null, Buffer.concat(chunks)));
    });
