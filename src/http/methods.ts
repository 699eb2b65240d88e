import type { FastifyInstance } from 'fastify';

/**
 * Says which methods an address takes, so that a wrong method is told from a wrong address (RFC 9110, section 15.5.6).
 * To be called before routes are added; addresses that end in a wildcard are left out.
 */
export function methodsByAddress(app: FastifyInstance): (path: string) => string[] {
  const addresses = new Map<string, { form: RegExp; methods: Set<string> }>();
  app.addHook('onRoute', ({ url, method }) => {
    if (url.includes('*')) return;
    const address = addresses.get(url) ?? { form: formOf(url), methods: new Set() };
    for (const each of [method].flat()) address.methods.add(each);
    addresses.set(url, address);
  });
  return (path) => {
    const here = [...addresses.values()].filter(({ form }) => form.test(path));
    return [...new Set(here.flatMap(({ methods }) => [...methods]))].sort();
  };
}

function formOf(url: string): RegExp {
  const parts = url.split('/').map((part) => (part.startsWith(':') ? '[^/]+' : literally(part)));
  return new RegExp(`^${parts.join('/')}$`);
}

const literally = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
