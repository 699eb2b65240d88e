import { mkdir, readFile } from 'node:fs/promises';
import fastifyStatic from '@fastify/static';
import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import { message } from '../../../shared/message/index.ts';
import { refused, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';

const open = { schema: { hide: true }, config: { permission: 'public' } } as const;
/** What the client has beside its page and its hashed assets. */
const rootFiles = ['sw.js', 'manifest.webmanifest', 'icon.svg', 'icon-192.png', 'icon-512.png', 'robots.txt'];

/**
 * The client, from the same process. Its own addresses all begin with `/app`, so that none of them is an address of
 * the API, and an address that the API lacks stays a problem document. Files named by their hash are kept by browsers
 * for good; page and service worker are asked for each time.
 */
export const clientFiles: FastifyPluginAsync<{ services: Services }> = async (app, { services }) => {
  const folder = services.config.clientFolder;
  // The plugin wants a folder that is there; without one every address below says what to do.
  await mkdir(folder, { recursive: true });
  await app.register(fastifyStatic, { root: folder, serve: false, preCompressed: true, cacheControl: false });

  const page = async (request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> => {
    const built = await readFile(`${folder}/index.html`).catch(() => null);
    if (built === null) {
      return sendProblem(request, reply, refused('not-found', message('clientNotBuilt')));
    }
    return reply.header('cache-control', 'no-cache').type('text/html; charset=utf-8').send(built);
  };
  // The service worker keeps the page under its file's name.
  for (const address of ['/', '/index.html', '/app', '/app/*']) app.get(address, open, page);

  app.get<{ Params: { '*': string } }>('/assets/*', open, (request, reply) =>
    reply
      .header('cache-control', 'public, max-age=31536000, immutable')
      .sendFile(`assets/${request.params['*']}`),
  );
  for (const file of rootFiles) {
    app.get(`/${file}`, open, (_request, reply) => reply.header('cache-control', 'no-cache').sendFile(file));
  }
  // A missing file: no problem document is kept for good.
  app.addHook('onSend', async (_request, reply) => {
    if (reply.statusCode >= 400) reply.header('cache-control', 'no-store');
  });
};
