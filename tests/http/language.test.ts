import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { german } from '../../shared/message/de/index.ts';
import { english } from '../../shared/message/en/index.ts';
import { messageText } from '../../shared/message/index.ts';
import { problemInWords } from '../../src/http/language.ts';
import { withSentences } from '../../src/replies/spoken.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';

const said = { code: 'unknownMessage', values: {} };

describe('the sentence beside a message', () => {
  it('is in the language asked for, wherever the message lies', () => {
    for (const language of [english, german]) {
      const text = messageText(said, language, 'UTC');
      expect(withSentences({ findings: [{ what: said }] }, language)).toEqual({
        findings: [{ what: { ...said, text } }],
      });
    }
    expect(messageText(said, german, 'UTC')).not.toBe(messageText(said, english, 'UTC'));
  });

  it('is not in a ticket’s record, nor beside what only looks like a message', () => {
    const body = { triage: { what: said }, other: { code: 'noSuchCode', values: {} } };
    expect(withSentences(body, german)).toEqual(body);
  });
});

describe('a problem', () => {
  it('that was kept with its sentences, before they were data, goes out as it was', () => {
    const kept = { type: '/problems/not-found', title: 'Nothing here', status: 404, detail: 'No such site.' };
    expect(problemInWords(kept, german)).toEqual(kept);
  });

  it('without a kind is called what its status is', () => {
    const blank = { type: 'about:blank', status: 409 };
    expect(problemInWords(blank, german)).toMatchObject({ title: 'Conflict', detail: 'Conflict' });
  });
});

describe.each(databaseKinds())('languages of the API, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const read = (path: string, headers: Record<string, string>) => {
    const request = test
      .request()
      .get(path)
      .set('authorization', `Bearer ${test.home.dispatcher.accessToken}`);
    for (const [name, value] of Object.entries(headers)) request.set(name, value);
    return request;
  };

  it('are named in every reply, English unless another is preferred', async () => {
    for (const [asked, given] of [
      ['de-AT, en;q=0.5', 'de'],
      ['en, de;q=0.9', 'en'],
      ['fr', 'en'],
      ['', 'en'],
    ] as const) {
      const answer = await read('/sites', { 'accept-language': asked });
      expect(answer.headers['content-language']).toBe(given);
      expect(answer.headers.vary).toMatch(/accept-language/i);
    }
  });

  it('have an ETag each, and an update takes either’s', async () => {
    const body = { client: 'Family Overwell', address: '1 Mill Lane' };
    const { headers } = await test.home.dispatcher.post('/sites', { body });
    const address = headers.location as string;
    const inEnglish = await read(address, {});
    const inGerman = await read(address, { 'accept-language': 'de' });
    expect(inGerman.headers.etag).not.toBe(inEnglish.headers.etag);
    const asked = { 'if-none-match': inGerman.headers.etag as string };
    expect((await read(address, { ...asked, 'accept-language': 'de' })).status).toBe(304);
    expect((await read(address, asked)).status).toBe(200);
    const update = {
      ...body,
      client: 'Family Underwell',
      timeZone: null,
      contacts: [],
      hazards: [],
      notes: '',
    };
    const changed = await test.home.dispatcher.put(address, {
      body: update,
      ifMatch: inGerman.headers.etag as string,
    });
    expect(changed.body).toMatchObject({ client: 'Family Underwell' });
  });

  it('are those of a problem too, whose code stands beside its sentences', async () => {
    const nowhere = `/sites/${randomUUID()}`;
    const [inEnglish, inGerman] = [await read(nowhere, {}), await read(nowhere, { 'accept-language': 'de' })];
    for (const [answer, language] of [
      [inEnglish, english],
      [inGerman, german],
    ] as const) {
      expect(answer.headers['content-language']).toBe(language.tag);
      expect(answer.headers['content-type']).toContain('application/problem+json');
      expect(answer.body).toMatchObject({
        type: '/problems/not-found',
        title: language.sentences['problems/not-found']({}, language.say('UTC')),
        detail: language.sentences.noSuchSite({}, language.say('UTC')),
        said: { code: 'noSuchSite', values: {} },
      });
    }
  });

  it('are named by every reply, also one that is not changed, refused before it was read, or a problem’s page', async () => {
    const fresh = await read('/sites', { 'accept-language': 'de' });
    const asked = { 'accept-language': 'de', 'if-none-match': fresh.headers.etag as string };
    const unsigned = await test.request().get('/sites').set('accept-language', 'de');
    const page = await read('/problems/last-admin', { 'accept-language': 'de' });
    for (const answer of [await read('/sites', asked), unsigned, page]) {
      expect(answer.headers['content-language']).toBe('de');
      expect(answer.headers.vary).toMatch(/accept-language/i);
    }
    expect(page.body.title).toBe(german.sentences['problems/last-admin']({}, german.say('UTC')));
  });

  it('may differ between a refusal and the same one repeated under its key', async () => {
    const [path, key] = [`/sites/${randomUUID()}`, randomUUID()];
    const body = { client: 'Family Overwell', address: '2 Mill Lane', timeZone: null, contacts: [] };
    const put = (language: string) =>
      test.home.dispatcher.put(path, {
        body: { ...body, hazards: [], notes: '' },
        key,
        headers: { 'accept-language': language },
      });
    const [first, again] = [await put('en'), await put('de')];
    expect(again.headers['idempotency-replayed']).toBe('true');
    expect(again.body.instance).toBe(first.body.instance);
    expect(first.body.detail).toBe(english.sentences.noSuchSite({}, english.say('UTC')));
    expect(again.body.detail).toBe(german.sentences.noSuchSite({}, german.say('UTC')));
    expect(again.headers['content-language']).toBe('de');
  });
});
