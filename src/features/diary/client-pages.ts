import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import { DateTime } from 'luxon';
import { z } from 'zod';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { cameBackAnswers, lastedAnswers } from '../../../shared/contract/diary-names.ts';
import { id } from '../../../shared/contract/primitives.ts';
import { type Context, languageOf } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { readCode } from './code.ts';
import { openDiaryOf, ownerOfCode } from './diaries.read.ts';
import { type DiaryView, diaryPage, entryPage, failedPage, notOpenPage, policy } from './page.ts';
import { answer, deleteAll, isTooMuch, type OpenDiary, report } from './reports.ts';
import { sentBy, zoneOf } from './sent.ts';

/** What a form on the page sends; radio buttons that nobody chose are not in it. */
const posted = z.discriminatedUnion('what', [
  z.object({ what: z.literal('now'), report: id }),
  z.object({ what: z.literal('earlier'), report: id, at: z.string().max(40) }),
  z.object({
    what: z.literal('answers'),
    report: id,
    lasted: z.enum(lastedAnswers).nullable().default(null),
    cameBack: z.enum(cameBackAnswers).nullable().default(null),
  }),
  z.object({ what: z.literal('delete') }),
]);
type Posted = z.infer<typeof posted>;
/** What a page says on top, by its address; the report that was sent by its id. */
const shown = z.object({ sent: id.optional(), said: z.enum(['answered', 'removed']).optional() });
type Say = DiaryView['say'];

type Opened = {
  readonly context: Context;
  readonly diary: OpenDiary & { until: Date };
  readonly code: string;
};

/**
 * The pages of a client's diary, for whoever has its code: plain forms on pages that run nothing. Opening one writes
 * nothing, since messengers open links by themselves. A wrong, expired or closed code is answered alike.
 */
export const clientPages: FastifyPluginAsync<{ services: Services }> = async (app, { services }) => {
  app.addContentTypeParser(
    'application/x-www-form-urlencoded',
    { parseAs: 'string', bodyLimit: 4096 },
    (_request, body, done) => done(null, Object.fromEntries(new URLSearchParams(String(body)))),
  );
  app.setErrorHandler((error: { statusCode?: number }, request, reply) => {
    const status = error.statusCode ?? 500;
    if (status >= 500) request.log.error({ err: error }, 'a page of a diary failed');
    return sendPage(request, reply.code(status), failedPage(languageOf(request).tag, status === 429));
  });
  const route = {
    schema: { hide: true },
    // The address holds the code, which belongs in no log.
    logLevel: 'warn' as const,
    config: {
      permission: 'public' as const,
      rateLimit: { max: services.config.diaryPerMin, timeWindow: '1 minute' },
    },
  };

  const asHolder = async (
    request: FastifyRequest,
    reply: FastifyReply,
    work: (opened: Opened) => Promise<string | { readonly to: string }>,
  ): Promise<FastifyReply> => {
    const code = readCode((request.params as { code: string }).code);
    const owner = code === null ? null : await ownerOfCode(services.database, code);
    const language = languageOf(request).tag;
    const done =
      code === null || owner === null
        ? null
        : await services.database.inTenant({ orgId: owner.orgId, memberId: null }, async (tx) => {
            const open = await openDiaryOf({ tx, services }, owner);
            if (open === null) return null;
            const { actor, ...diary } = open;
            return work({ context: { tx, actor, services, language }, diary, code });
          });
    if (done === null) return sendPage(request, reply.code(404), notOpenPage(language));
    return typeof done === 'string' ? sendPage(request, reply, done) : reply.redirect(done.to, 303);
  };

  app.get<{ Querystring: { code?: string } }>(addresses.diaryEntry, route, (request, reply) => {
    const code = readCode(String(request.query.code ?? ''));
    if (code !== null) return reply.redirect(addressOf(addresses.diaryPage, { code }), 303);
    const { tag } = languageOf(request);
    const isWrong = request.query.code !== undefined;
    return isWrong
      ? sendPage(request, reply.code(404), notOpenPage(tag))
      : sendPage(request, reply, entryPage(tag));
  });
  app.get(addresses.diaryPage, route, (request, reply) =>
    asHolder(request, reply, async (opened) => {
      const { sent, said } = shown.catch({}).parse(request.query);
      const report = (await sentBy(opened.context, opened.diary)).find((one) => one.id === sent);
      const say: Say = report === undefined ? { kind: said ?? 'nothing' } : { kind: 'sent', report };
      return viewOf(opened, say);
    }),
  );
  app.post(addresses.diaryPage, route, (request, reply) =>
    asHolder(request, reply, async (opened) => {
      const read = posted.safeParse(request.body);
      return read.success ? take(opened, read.data) : viewOf(opened, { kind: 'timeUnknown' });
    }),
  );
};

function sendPage(request: FastifyRequest, reply: FastifyReply, page: string): FastifyReply {
  return reply
    .header('content-security-policy', policy)
    .header('content-language', languageOf(request).tag)
    .header('vary', 'accept-language')
    .header('cache-control', 'no-store')
    .header('x-robots-tag', 'noindex')
    .type('text/html; charset=utf-8')
    .send(page);
}

async function viewOf({ context, diary, code }: Opened, say: Say): Promise<string> {
  return diaryPage({
    language: context.language,
    zone: await zoneOf(context, diary),
    code,
    until: diary.until,
    nextId: context.services.newId(),
    sent: await sentBy(context, diary),
    say,
  });
}

/** Does what a form asks, and goes back to the page by its address, so that reloading it sends nothing again. */
async function take(opened: Opened, form: Posted): Promise<string | { to: string }> {
  const { context, diary, code } = opened;
  const to = (query: string) => ({ to: `${addressOf(addresses.diaryPage, { code })}?${query}` });
  switch (form.what) {
    case 'delete':
      await deleteAll(context, diary);
      return to('said=removed');
    case 'answers':
      if ((await sentBy(context, diary)).some((one) => one.id === form.report))
        await answer(context, diary, {
          reportId: form.report,
          lasted: form.lasted,
          cameBack: form.cameBack,
        });
      return to('said=answered');
    case 'now':
    case 'earlier': {
      const occurredAt = await momentOf(opened, form);
      if (occurredAt === null) return viewOf(opened, { kind: 'timeUnknown' });
      if (isTooMuch(await sentBy(context, diary), context.services.now()))
        return viewOf(opened, { kind: 'tooMuch' });
      await report(context, diary, { reportId: form.report, occurredAt });
      return to(`sent=${form.report}`);
    }
  }
}

/** Assumed: what came longer ago than this, nobody tells by the hour any more. */
const longestAgoDays = 60;

/** When it came, UTC; null for a time that can't be read, lies ahead, or too long ago. */
async function momentOf({ context, diary }: Opened, form: Posted): Promise<string | null> {
  const now = context.services.now();
  if (form.what !== 'earlier') return now.toISOString();
  const told = DateTime.fromISO(form.at, { zone: await zoneOf(context, diary) });
  const agoMs = now.getTime() - told.toMillis();
  return told.isValid && agoMs >= 0 && agoMs <= longestAgoDays * 86_400_000
    ? new Date(told.toMillis()).toISOString()
    : null;
}
