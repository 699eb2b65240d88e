import type { MemberRole } from '../../shared/contract/primitives.ts';

const all: readonly MemberRole[] = ['dispatcher', 'technician', 'support', 'admin'];
const only = (...roles: MemberRole[]): readonly MemberRole[] => roles;
const floor = only('dispatcher', 'technician', 'admin');

export type RouteRow = {
  method: 'get' | 'post' | 'put' | 'delete';
  path: string;
  /** Who may use it; written down here by hand, so that a slip in the code's own table shows. */
  roles: readonly MemberRole[];
  body?: object;
};
const route = (line: string, roles: readonly MemberRole[], body?: object): RouteRow => {
  const [method = '', path = ''] = line.split(' ');
  return {
    method: method.toLowerCase() as RouteRow['method'],
    path,
    roles,
    ...(body === undefined ? {} : { body }),
  };
};

const site = { client: 'Intruder', address: '1 Else Lane' };
const password = 'a password for tests';
const level = { model: 'Quellor R-9', minimum: '1.8' };
const chain = { name: 'Empty', devices: [], links: [] };
const intake = { symptom: { kind: 'dropOuts' } };
const reading = { reading: { kind: 'note', text: 'Was here.' } };

/** Every route that needs a sign-in. `{id}` and the like are filled in from a set of ids by the path's first part. */
export const guardedRoutes: readonly RouteRow[] = [
  route('GET /me', all),
  route('POST /me/password', all, { current: 'not the password', password: 'another password' }),
  route('GET /me/sessions', all),
  route('POST /me/sessions/{id}/end', all),
  route('POST /me/sessions/end-others', all),
  route('GET /me/second-factors', all),
  route('POST /me/second-factors/app/end', all, { password: 'not the password' }),
  route('POST /auth/app/new', all),
  route('POST /auth/app', all, { password: 'not the password', proposal: 'none', code: '000000' }),
  route('POST /auth/recovery-codes', all, { password: 'not the password' }),
  route('GET /members', all),
  route('GET /members/{id}', all),
  route('POST /members', only('admin'), {
    name: 'In Truder',
    email: 'in@truder.example',
    role: 'technician',
    password,
  }),
  route('PUT /members/{id}', only('admin'), { name: 'Renamed', role: 'technician', active: true }),
  route('POST /members/{id}/password', only('admin'), { password }),
  route('POST /members/{id}/second-factors/end', only('admin')),
  route('GET /organisation', all),
  route('PUT /organisation', only('admin'), { name: 'Renamed', settings: {} }),
  route('GET /organisation/usage', only('admin')),
  route('GET /organisation/audit-log', only('admin')),
  route('GET /fault-model', all),
  route('GET /firmware-levels', all),
  route('GET /firmware-levels/{id}', all),
  route('POST /firmware-levels', only('admin', 'support'), { model: 'Intruder', minimum: '1' }),
  route('PUT /firmware-levels/{id}', only('admin', 'support'), level),
  route('DELETE /firmware-levels/{id}', only('admin', 'support')),
  route('GET /sites', all),
  route('GET /sites/{id}', all),
  route('POST /sites', floor, site),
  route('PUT /sites/{id}', floor, site),
  route('GET /sites/{id}/export', only('admin')),
  route('GET /sites/{id}/chains', all),
  route('POST /sites/{id}/chains', floor, chain),
  route('GET /chains/{id}', all),
  route('PUT /chains/{id}', floor, chain),
  route('GET /chains/{id}/versions', all),
  route('GET /chains/{id}/versions/{version}', all),
  route('GET /chains/{id}/versions/{version}/changes-since/{from}', all),
  route('GET /chains/{id}/audit', all),
  route('GET /chains/{id}/budget', all),
  route('GET /chains/{id}/edids', all),
  route('GET /tickets', all),
  route('POST /tickets', floor, {
    siteId: '{site}',
    chainId: '{chain}',
    intake,
    seenDuplicates: ['{ticket}'],
  }),
  route('GET /tickets/{id}', all),
  route('PUT /tickets/{id}', floor, { priority: 'low', assigneeId: null, visitAt: null, intake: {} }),
  route('POST /tickets/{id}/assignment', floor, { assigneeId: '{member}' }),
  route('POST /tickets/{id}/take-over', only('technician', 'admin')),
  route('POST /tickets/{id}/commands', all, { type: 'note', text: 'Was here.' }),
  route('GET /tickets/{id}/applicable-changes', all),
  route('GET /tickets/{id}/timeline', all),
  route('GET /tickets/{id}/plan', all),
  route('GET /tickets/{id}/phone-plan', all),
  route('GET /tickets/{id}/log', all),
  route('GET /tickets/{id}/log-findings', all),
  route('GET /tickets/{id}/log/check', all),
  route('POST /tickets/{id}/erasures', only('admin'), {
    event: 1,
    pointer: '/intake/notes',
    reason: 'Names a neighbour.',
  }),
  route('GET /support-queue', only('support', 'admin')),
  route('GET /past-cases', only('support', 'admin')),
  route('GET /tickets/{id}/diaries', floor),
  route('POST /tickets/{id}/diaries', floor, { days: 7 }),
  route('POST /diaries/{id}/close', floor),
  route('GET /tickets/{id}/evidence', all),
  route('POST /tickets/{id}/evidence', all),
  route('POST /tickets/{id}/readings', all, reading),
  route('GET /evidence/{id}', all),
  route('GET /evidence/{id}/content', all),
  route('GET /evidence/{id}/thumbnail', all),
  route('POST /evidence/{id}/withdraw', floor, { reason: 'Not theirs to keep.' }),
  route('GET /tickets/{id}/packets', all),
  route('GET /packets/{id}', all),
  route('GET /packets/{id}/summary', all),
  route('GET /packets/{id}/download', all),
  route('GET /packets/{id}/grants', only('support', 'admin')),
  route('POST /packets/{id}/grants', only('support', 'admin'), { memberAddress: '{member}' }),
  route('POST /grants/{id}/revoke', only('support', 'admin')),
  route('GET /granted-packets', only('support')),
  route('GET /export', only('admin')),
];

/** Routes whose reply does not end by itself: tests/features/live asks them. */
export const streamRoutes: readonly string[] = ['GET /events'];

/** Routes that anybody may use. */
export const openRoutes: readonly string[] = [
  'POST /auth/sign-in',
  'POST /auth/second-step',
  'POST /auth/refresh',
  'POST /auth/sign-out',
  'GET /signing-key',
  'GET /healthz',
  'GET /readyz',
];

/** One id of each kind of thing, by the first part of the paths that take it. */
export type Ids = Record<
  | 'members'
  | 'firmware-levels'
  | 'sites'
  | 'chains'
  | 'tickets'
  | 'evidence'
  | 'packets'
  | 'grants'
  | 'diaries',
  string
>;

/** The row's path with these ids in it. */
export function pathWith(row: RouteRow, ids: Ids): string {
  const kind = row.path.split('/')[1] as keyof Ids;
  return row.path.replace('{id}', ids[kind]).replace('{version}', '1').replace('{from}', '1');
}

/** The row's body with these ids in it. */
export function bodyWith(row: RouteRow, ids: Ids): object | undefined {
  if (row.body === undefined) return undefined;
  const text = JSON.stringify(row.body)
    .replaceAll('{site}', ids.sites)
    .replaceAll('{chain}', ids.chains)
    .replaceAll('{ticket}', ids.tickets)
    .replaceAll('{member}', ids.members);
  return JSON.parse(text) as object;
}
