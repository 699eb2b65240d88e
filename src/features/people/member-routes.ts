import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import {
  me,
  member,
  memberUpdate,
  newMember,
  passwordChange,
  passwordReset,
  session,
} from '../../../shared/contract/people.ts';
import { byId, itemsOf } from '../../../shared/contract/primitives.ts';
import { found, sendProblem, updateIn } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { accountOf } from './account.read.ts';
import {
  addMember,
  changePassword,
  endFactorsOf,
  listMembers,
  readMember,
  resetPassword,
  updateMember,
} from './members.ts';
import { wrongPassword } from './password-again.ts';
import { endMyOtherSessions, endMySession, listSessions } from './sessions.ts';

/** The organisation's members, and one's own account. */
export const memberRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  app.get(
    addresses.me,
    {
      schema: {
        summary: 'Who I am, and the address at which I can be granted a packet',
        response: { 200: me },
      },
      config: { permission: 'own account' },
    },
    (_request, reply) =>
      reply.fromRead(async ({ tx, actor }) =>
        found({ ...(await accountOf(tx, actor)), memberAddress: actor.memberId }),
      ),
  );
  app.post(
    addresses.ownPassword,
    {
      schema: {
        summary: 'Change my password; ends my other sign-ins',
        body: passwordChange,
        response: { 200: member },
      },
      config: { permission: 'own account' },
    },
    async (request, reply) => {
      const asked = { password: request.body.current, pointer: '/current' };
      const wrong = await wrongPassword(services, request, asked);
      if (wrong !== null) return sendProblem(request, reply, wrong);
      return reply.fromWrite((context) => changePassword(context, request.body));
    },
  );
  app.get(
    addresses.ownSessions,
    {
      schema: { summary: 'Where I am signed in', response: { 200: itemsOf(session) } },
      config: { permission: 'own account' },
    },
    (_request, reply) => reply.fromRead(listSessions),
  );
  app.post(
    addresses.endOwnSession,
    {
      schema: {
        summary: 'End one of my sign-ins at once, with all its tokens; gives those that are left',
        params: byId,
        response: { 200: itemsOf(session) },
      },
      config: { permission: 'own account' },
    },
    (request, reply) => reply.fromWrite((context) => endMySession(context, request.params.id)),
  );
  app.post(
    addresses.endOtherSessions,
    {
      schema: {
        summary: 'End all my sign-ins but this one at once; gives this one',
        response: { 200: itemsOf(session) },
      },
      config: { permission: 'own account' },
    },
    (_request, reply) => reply.fromWrite(endMyOtherSessions),
  );
  app.get(
    addresses.members,
    {
      schema: { summary: 'All members', response: { 200: itemsOf(member) } },
      config: { permission: 'read members' },
    },
    (_request, reply) => reply.fromRead(listMembers),
  );
  app.get(
    addresses.member,
    {
      schema: { summary: 'One member', params: byId, response: { 200: member } },
      config: { permission: 'read members' },
    },
    (request, reply) => reply.fromRead((context) => readMember(context, request.params.id)),
  );
  app.post(
    addresses.members,
    {
      schema: { summary: 'Add a member', body: newMember, response: { 201: member } },
      config: { permission: 'manage members' },
    },
    (request, reply) => reply.fromWrite((context) => addMember(context, request.body)),
  );
  app.put(
    addresses.member,
    {
      schema: {
        summary: 'Change name, role or activity of a member (If-Match)',
        params: byId,
        body: memberUpdate,
        response: { 200: member },
      },
      config: { permission: 'manage members' },
    },
    (request, reply) =>
      reply.fromWrite((context) => updateMember(context, request.params.id, updateIn(request))),
  );
  app.post(
    addresses.memberPassword,
    {
      schema: {
        summary: "Set a member's password for them",
        params: byId,
        body: passwordReset,
        response: { 200: member },
      },
      config: { permission: 'manage members' },
    },
    (request, reply) =>
      reply.fromWrite((context) => resetPassword(context, request.params.id, request.body.password)),
  );
  app.post(
    addresses.endMemberFactors,
    {
      schema: {
        summary: 'Take the second factors of a member who has lost theirs; ends their sign-ins',
        params: byId,
        response: { 200: member },
      },
      config: { permission: 'manage members' },
    },
    (request, reply) => reply.fromWrite((context) => endFactorsOf(context, request.params.id)),
  );
};
