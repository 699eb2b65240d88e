import type { FastifyInstance } from 'fastify';
import { ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { type MemberRole, memberRoles } from '../../../shared/contract/primitives.ts';
import { type ProblemKind, problemKinds, problemStatuses } from '../../../shared/contract/problem.ts';
import { typeOfKind } from '../../../shared/contract/problem-type.ts';
import { english } from '../../../shared/message/en/index.ts';
import { commandRoles, triageMachine, waysOf } from '../../../state-machines/index.ts';
import { access, problemInWords } from '../../http/index.ts';

export type Reference = {
  roles: readonly MemberRole[];
  /** What routes ask for, with the roles that have it. */
  permissions: { permission: string; roles: readonly MemberRole[] }[];
  /** Ticket commands: who may send them, and in which states the machine takes them; `to` null: the state stays. */
  commands: {
    command: string;
    roles: readonly MemberRole[];
    /** States by their path, parts joined by dots; none stands for every state. */
    ways: { from: string[]; to: string | null }[];
  }[];
  /** Roles are null where nobody has to be signed in. */
  routes: { method: string; path: string; summary: string; roles: readonly string[] | null }[];
  problems: { kind: ProblemKind; status: number; title: string }[];
};

type Operation = { summary?: string; 'x-roles'?: readonly string[] };
type Description = { paths?: Record<string, Record<string, Operation>> };

const routesOf = (app: FastifyInstance): Reference['routes'] => {
  const { paths = {} } = app.swagger() as Description;
  return Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { summary = '', 'x-roles': roles = [] }]) => ({
      method: method.toUpperCase(),
      path,
      summary,
      roles: roles.includes('anyone') ? null : roles,
    })),
  );
};

function waysBy(command: string): Reference['commands'][number]['ways'] {
  const ways = waysOf(triageMachine).filter(({ by }) => by === command);
  return [...new Set(ways.map(({ to }) => to))].map((to) => ({
    to,
    from: ways.filter((way) => way.to === to && way.from !== '').map(({ from }) => from),
  }));
}

/** What a developer looks up, from the tables that the code itself goes by; for an app whose routes are all there. */
export function referenceOf(app: FastifyInstance): Reference {
  return {
    roles: memberRoles,
    permissions: Object.entries(access).map(([permission, roles]) => ({ permission, roles })),
    commands: ticketCommandTypes.map((command) => ({
      command,
      roles: commandRoles[command],
      ways: waysBy(command),
    })),
    routes: routesOf(app),
    problems: problemKinds.map((kind) => {
      const status = problemStatuses[kind];
      return { kind, status, title: problemInWords({ type: typeOfKind(kind), status }, english).title };
    }),
  };
}
