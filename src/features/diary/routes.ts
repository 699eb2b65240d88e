import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { diaryWithCode, newDiary, ticketDiary } from '../../../shared/contract/diary.ts';
import { byId, itemsOf } from '../../../shared/contract/primitives.ts';
import type { Services } from '../../services.ts';
import { clientPages } from './client-pages.ts';
import { listDiaries } from './diaries.read.ts';
import { closeDiary, openDiary } from './diaries.ts';

const keep = { permission: 'keep diaries' } as const;

/** Clients' diaries: opened and closed by who works on the ticket, written by the client, who has no account. */
export const diaryRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  app.get(
    addresses.ticketDiaries,
    {
      schema: {
        summary: "A ticket's diaries for the client, newest first, with the codes of those that are open",
        params: byId,
        response: { 200: itemsOf(diaryWithCode) },
      },
      config: keep,
    },
    (request, reply) => reply.fromRead((context) => listDiaries(context, request.params.id)),
  );
  app.post(
    addresses.ticketDiaries,
    {
      schema: {
        summary: 'Open a diary in which the client says when the fault came, without an account',
        params: byId,
        body: newDiary,
        response: { 201: ticketDiary },
      },
      config: keep,
    },
    (request, reply) => reply.fromWrite((context) => openDiary(context, request.params.id, request.body)),
  );
  app.post(
    addresses.closeDiary,
    {
      schema: { summary: 'Close a diary for good', params: byId, response: { 200: ticketDiary } },
      config: keep,
    },
    (request, reply) => reply.fromWrite((context) => closeDiary(context, request.params.id)),
  );
  await app.register(clientPages, { services });
};
