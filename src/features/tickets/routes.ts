import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { ticketCommand } from '../../../shared/contract/commands.ts';
import { logCheck } from '../../../shared/contract/log-check.ts';
import { pastCase, pastCaseQuery } from '../../../shared/contract/past-case.ts';
import { byId, itemsOf, pageOf } from '../../../shared/contract/primitives.ts';
import {
  applicableChange,
  assignment,
  newTicket,
  queueEntry,
  textErasure,
  ticket,
  ticketEvent,
  ticketQuery,
  ticketSummary,
  ticketUpdate,
  timelineEntry,
} from '../../../shared/contract/ticket.ts';
import { applicableChanges } from '../../../state-machines/index.ts';
import { type Context, found, updateIn } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { figuresForChanges } from '../organisation/index.ts';
import { findTicket, noTicket } from '../ticket-record/index.ts';
import { assignTicket, takeOverTicket, updateTicket } from './assign.ts';
import { checkLog } from './check-log.ts';
import { eraseText } from './erase-text.ts';
import { listTickets, readTicket } from './list-tickets.read.ts';
import { openTicket } from './open-ticket.ts';
import { pastCases } from './past-cases.ts';
import { supportQueue } from './queue.ts';
import { readLog } from './read-log.ts';
import { sendCommand } from './send-command.ts';
import { readTimeline } from './timeline.ts';

const read = { permission: 'read tickets' } as const;
const logQuery = z.object({ after: z.coerce.number().int().min(0).max(2_147_483_647).default(0) });

/** A ticket grows, so that a reply with it is not kept but read again. */
const again = ({ params }: { readonly params: { readonly id: string } }) => ({
  again: (context: Context) => readTicket(context, params.id),
});

/** Tickets: opened in a call, worked by command, read by everybody in the organisation. */
export const ticketRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
  app.get(
    addresses.tickets,
    {
      schema: {
        summary: 'Tickets, newest first, filtered, by page',
        querystring: ticketQuery,
        response: { 200: pageOf(ticketSummary) },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => listTickets(context, request.query)),
  );
  app.post(
    addresses.tickets,
    {
      schema: {
        summary: 'Open a ticket; open ones at the same chain have to be seen first',
        body: newTicket,
        response: { 201: ticket },
      },
      config: { permission: 'open tickets' },
    },
    (request, reply) => reply.fromWrite((context) => openTicket(context, request.body)),
  );
  app.get(
    addresses.ticket,
    {
      schema: {
        summary: 'A ticket with all triage knows and what is allowed now',
        params: byId,
        response: { 200: ticket },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => readTicket(context, request.params.id)),
  );
  app.put(
    addresses.ticket,
    {
      schema: {
        summary: 'Change priority, visit, assignee or intake (If-Match)',
        params: byId,
        body: ticketUpdate,
        response: { 200: ticket },
      },
      config: { permission: 'update tickets' },
    },
    (request, reply) =>
      reply.fromWrite(
        (context) => updateTicket(context, request.params.id, updateIn(request)),
        again(request),
      ),
  );
  app.post(
    addresses.assignment,
    {
      schema: {
        summary: 'Assign to a technician, or to nobody',
        params: byId,
        body: assignment,
        response: { 200: ticket },
      },
      config: { permission: 'assign tickets' },
    },
    (request, reply) =>
      reply.fromWrite(
        (context) => assignTicket(context, request.params.id, request.body.assigneeId),
        again(request),
      ),
  );
  app.post(
    addresses.takeOver,
    {
      schema: { summary: 'Take the ticket over', params: byId, response: { 200: ticket } },
      config: { permission: 'take over tickets' },
    },
    (request, reply) =>
      reply.fromWrite((context) => takeOverTicket(context, request.params.id), again(request)),
  );
  app.post(
    addresses.commands,
    {
      schema: {
        summary: 'One step of the ticket',
        params: byId,
        body: ticketCommand,
        response: { 200: ticket },
      },
      config: { permission: 'send ticket commands' },
    },
    (request, reply) =>
      reply.fromWrite(
        (context) => sendCommand(context, request.params.id, updateIn(request)),
        again(request),
      ),
  );
  app.get(
    addresses.applicableChanges,
    {
      schema: {
        summary: 'Changes that apply here now, with kit, caution and instructions',
        params: byId,
        response: { 200: itemsOf(applicableChange) },
      },
      config: read,
    },
    (request, reply) =>
      reply.fromRead(async (context) => {
        const row = await findTicket(context, request.params.id);
        return row === null
          ? noTicket
          : found({ items: applicableChanges(row.snapshot, await figuresForChanges(context)) });
      }),
  );
  app.get(
    addresses.timeline,
    {
      schema: {
        summary: 'Everything that happened, in sentences',
        params: byId,
        response: { 200: itemsOf(timelineEntry) },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => readTimeline(context, request.params.id)),
  );
  app.get(
    addresses.log,
    {
      schema: {
        summary: 'The log with its hashes (`after`: from that sequence on)',
        params: byId,
        querystring: logQuery,
        response: { 200: itemsOf(ticketEvent) },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => readLog(context, request.params.id, request.query.after)),
  );
  app.get(
    addresses.logCheck,
    {
      schema: {
        summary: 'Numbers, hashes and replay of the log, checked, with all that differs',
        params: byId,
        response: { 200: logCheck },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => checkLog(context, request.params.id)),
  );
  app.post(
    addresses.erasures,
    {
      schema: {
        summary: 'Erase what a person typed, from the log and from its copies',
        params: byId,
        body: textErasure,
        response: { 200: ticket },
      },
      config: { permission: 'erase texts' },
    },
    (request, reply) => reply.fromWrite((context) => eraseText(context, request.params.id, request.body)),
  );
  app.get(
    addresses.supportQueue,
    {
      schema: {
        summary: 'Cases with second line, the longest waiting first',
        response: { 200: itemsOf(queueEntry) },
      },
      config: { permission: 'read the support queue' },
    },
    (_request, reply) => reply.fromRead(supportQueue),
  );
  app.get(
    addresses.pastCases,
    {
      schema: {
        summary:
          'Closed tickets and what they were: those like a ticket, or found by words; the newest of each',
        querystring: pastCaseQuery,
        response: { 200: pageOf(pastCase) },
      },
      config: { permission: 'read the support queue' },
    },
    (request, reply) => reply.fromRead((context) => pastCases(context, request.query)),
  );
};
