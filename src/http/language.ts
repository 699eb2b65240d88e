import { STATUS_CODES } from 'node:http';
import type { FastifyReply, FastifyRequest } from 'fastify';
import fastifyPlugin from 'fastify-plugin';
import Negotiator from 'negotiator';
import type { Problem, SpokenProblem } from '../../shared/contract/problem.ts';
import { english } from '../../shared/message/en/index.ts';
import { type Language, type Message, messageText } from '../../shared/message/index.ts';
import { languages, withSentences, zone } from '../replies/spoken.ts';
import { problemType } from './problem.ts';

/** The language that a request asks for by `Accept-Language` (RFC 9110, section 12.5.4); English where it names none. */
export function languageOf(request: FastifyRequest): Language {
  const tag = new Negotiator({ headers: request.headers }).language(languages.map((one) => one.tag));
  return languages.find((one) => one.tag === tag) ?? english;
}

/**
 * The ETag of a body in a language: the data's own, and the language behind a full stop. English, in which nobody has
 * to ask, is the data's own.
 */
export const etagIn = (etag: string, { tag }: Language): string =>
  tag === 'en' ? etag : `${etag.slice(0, -1)}.${tag}"`;
/** The data's own ETag, whatever language the body was in that it came with. */
export const withoutLanguage = (etag: string): string => etag.replace(/\.[a-z]{2}"$/, '"');

/**
 * A problem with title and detail as sentences (RFC 9457, section 3.1). What was kept with its sentences, by an earlier
 * version, goes out as it is.
 */
export function problemInWords(problem: Problem, language: Language): SpokenProblem {
  const { type, title, status, detail, said, ...facts } = problem;
  const sentence = (one: Message): string => messageText(one, language, zone);
  const name =
    title ??
    (type === 'about:blank' ? STATUS_CODES[status] : sentence({ code: type.slice(1), values: {} })) ??
    String(status);
  return {
    type,
    title: name,
    status,
    detail: detail ?? (said === undefined ? name : sentence(said)),
    ...(said === undefined ? {} : { said }),
    ...(withSentences(facts, language) as typeof facts),
  };
}

/** Says which language a reply is in, and that another was to be had. */
export function nameLanguage(request: FastifyRequest, reply: FastifyReply): Language {
  const language = languageOf(request);
  const vary = String(reply.getHeader('vary') ?? '');
  const named = vary
    .toLowerCase()
    .split(',')
    .some((one) => one.trim() === 'accept-language');
  reply.header('content-language', language.tag);
  if (!named) reply.header('vary', vary === '' ? 'accept-language' : `${vary}, accept-language`);
  return language;
}

const isProblem = (reply: FastifyReply): boolean =>
  String(reply.getHeader('content-type')).startsWith(problemType);

/** Every JSON reply in the language that was asked for, problems included. */
export const spokenReplies = fastifyPlugin(async (app) => {
  app.addHook('preSerialization', async (request, reply, body) => {
    const language = nameLanguage(request, reply);
    return isProblem(reply) ? problemInWords(body as Problem, language) : withSentences(body, language);
  });
});
