import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toDirectedGraph } from 'xstate/graph';
import { ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { memberRoles } from '../../../shared/contract/primitives.ts';
import type { Reference } from '../../../src/features/reference/reference.ts';
import { triageMachine, waysOf } from '../../../state-machines/index.ts';
import { guardedRoutes } from '../../support/routes.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';

describe('the reference', () => {
  let test: TestApp;
  let reference: Reference;
  let page: string;
  const get = (accept: string) => test.request().get('/reference').set('accept', accept);
  beforeAll(async () => {
    test = await openTestApp('embedded');
    reference = (await get('application/json')).body;
    page = (await get('text/html')).text;
  });
  afterAll(() => test.close());

  /** The cells of the row that begins with this, without markup. */
  const rowOf = (first: string): string[] => {
    const rows = page.split('<tr>').map((row) =>
      row
        .split('<td>')
        .slice(1)
        .map((cell) => cell.replaceAll(/<[^>]*>/g, '').trim()),
    );
    return rows.find(([cell]) => cell === first) ?? [];
  };

  it('is a page that runs nothing, and JSON where that is asked for', async () => {
    const asked: [string, string][] = [
      ['*/*', 'text/html'],
      ['text/html,application/xhtml+xml,*/*;q=0.8', 'text/html'],
      ['application/json', 'application/json'],
      ['text/html;q=0.2, application/json;q=0.9', 'application/json'],
      ['image/png', 'text/html'],
    ];
    for (const [accept, type] of asked) {
      const reply = await get(accept);
      expect(reply.status, accept).toBe(200);
      expect(reply.headers['content-type'], accept).toContain(type);
      expect(reply.headers.vary, accept).toBe('accept');
    }
    expect(page).not.toMatch(/<script/i);
    expect((await get('text/html')).headers['content-security-policy']).toContain("default-src 'none'");
    for (const address of ['/reference/', '/reference/openapi/'])
      expect((await test.request().get(address)).status, address).toBe(200);
  });

  it('names every route that needs a sign-in with the roles that it is for', () => {
    expect(guardedRoutes.length).toBeGreaterThan(50);
    for (const { method, path, roles } of guardedRoutes) {
      const known = reference.routes.find((one) => one.method === method.toUpperCase() && one.path === path);
      expect([...(known?.roles ?? [])].sort(), `${method} ${path}`).toEqual([...roles].sort());
      const [, what, whom] = rowOf(`${method.toUpperCase()} ${path}`);
      expect(what).not.toBe('');
      expect(whom?.split(', ').sort()).toEqual([...roles].sort());
    }
    expect(rowOf('POST /auth/sign-in').at(-1)).toBe('anyone');
  });

  it('names every command with the roles and the states that it is for', () => {
    expect(reference.commands.map(({ command }) => command)).toEqual(ticketCommandTypes);
    for (const { command, ways } of reference.commands) expect(ways, command).not.toEqual([]);
    const yes = (...roles: string[]) => memberRoles.map((role) => (roles.includes(role) ? 'yes' : ''));
    expect(rowOf('handBack')).toEqual([
      'handBack',
      ...yes('support'),
      expect.stringContaining('escalated.underReview'),
    ]);
    expect(rowOf('close')).toEqual(['close', ...yes('technician', 'admin'), 'verify → closed']);
    expect(rowOf('note')).toEqual(['note', ...yes(...memberRoles), 'every state']);
  });

  it('knows the ways between states that the library itself reads out of the machine', () => {
    type Node = ReturnType<typeof toDirectedGraph>;
    const edgesIn = (node: Node): string[] => [
      ...node.edges.map(({ source, target, label, transition }) =>
        JSON.stringify([
          source.path.join('.'),
          label.text,
          transition.target === undefined ? null : target.path.join('.'),
        ]),
      ),
      ...node.children.flatMap(edgesIn),
    ];
    const ways = waysOf(triageMachine).filter(({ by }) => by !== null);
    expect(new Set(ways.map(({ from, by, to }) => JSON.stringify([from, by, to])))).toEqual(
      new Set(edgesIn(toDirectedGraph(triageMachine))),
    );
    expect(ways.length).toBeGreaterThan(80);
  });

  it('lists problems under addresses that explain them', async () => {
    expect(reference.problems.length).toBeGreaterThan(20);
    for (const { kind, status, title } of reference.problems) {
      expect((await test.request().get(`/problems/${kind}`)).body).toEqual({ kind, status, title });
      expect(rowOf(`/problems/${kind}`)).toEqual([`/problems/${kind}`, String(status), title]);
    }
  });
});
