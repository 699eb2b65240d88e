import { describe, expect, it } from 'vitest';
import { addresses, addressOf } from '../../shared/contract/addresses.ts';
import { guardedRoutes, openRoutes, streamRoutes } from '../support/routes.ts';

/** Not for clients of the API: probes, and what is asked by other means than a client's documents and writes. */
const probes = ['/healthz', '/readyz'];
/** The client's diary: pages for a browser that holds no sign-in. */
const pages = ['/d', '/d/{code}'];
const beside = ['/uploads', '/uploads/{id}', '/problems/{kind}'];

describe('the addresses of the contract', () => {
  it('are those of the routes, all of them and no other', () => {
    const lines = [...openRoutes, ...streamRoutes].map((line) => line.split(' ')[1] ?? '');
    const routes = new Set([...guardedRoutes.map(({ path }) => path), ...lines, ...beside, ...pages]);
    const contract = Object.values(addresses).map((address) => address.replace(/:(\w+)/g, '{$1}'));
    expect(contract.toSorted()).toEqual([...routes].filter((path) => !probes.includes(path)).toSorted());
  });

  it('are filled in, every part of them', () => {
    expect(addressOf(addresses.me, {})).toBe('/me');
    expect(addressOf(addresses.changesSince, { id: 'a', version: 4, from: 2 })).toBe(
      '/chains/a/versions/4/changes-since/2',
    );
  });

  it('cannot be made with a part missing', () => {
    // @ts-expect-error: no id
    expect(addressOf(addresses.ticket, {})).toBe('/tickets/undefined');
  });
});
