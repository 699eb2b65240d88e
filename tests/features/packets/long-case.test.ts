import { randomUUID } from 'node:crypto';
import { text } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DiaryWithCode } from '../../../shared/contract/diary.ts';
import type { Packet } from '../../../shared/contract/packet.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { enTerms } from '../../../shared/message/en/index.ts';
import { summaryWordsEn as words } from '../../../src/features/packets/summary/words-en.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, type Command } from '../../support/tickets.ts';
import { postForm } from '../evidence/form-client.ts';
import { textOf } from './page-text.ts';

/*
 * A fault that comes once in some days: a change before arrival, a diary, a wait, a change left in between visits, the
 * client's choice, and second line's direction with its answer. The packet tells all of it.
 */

const dayMs = 86_400_000;
const start = Date.now() - 40 * dayMs;
const day = (days: number): string => new Date(start + days * dayMs).toISOString();
const firmwareOf = (level: string) => [{ deviceId: 'processor', level }];
const ownKind = {
  id: '5d0f4a52-6a1f-4a0e-9a77-0a3f5b1f2c01',
  name: 'Clip ferrites on',
  actsOn: 'link',
  setupMin: 4,
  restoreMin: 2,
  caution: 'Open no housing.',
  mayStay: true,
  keepsAway: 0.4,
};

/** The second change, in whatever words a kind of the firm's own is said. */
const ownAsSecond = new RegExp(`2\\. [^,]*${ownKind.name}`);

describe.each(databaseKinds())(
  'the packet of a fault that comes once in some days, on the %s database',
  (kind) => {
    let test: TestApp;
    let ticketId = '';
    const summaries: string[] = [];
    beforeAll(async () => {
      test = await openTestApp(kind);
      await settingsWithOwnKind();
      await intake();
      await firstVisit();
      await reported([3, 5.5, 7, 9.2]);
      await secondVisit();
      await reported([15]);
      await thirdVisit();
      await handOver();
      await stepOfSecondLine();
      test.setNow(null);
    });
    afterAll(() => test.close());

    const by = (member: keyof typeof test.home & ('technician' | 'support' | 'dispatcher'), days: number) => {
      test.setNow(new Date(start + days * dayMs));
      return (command: Command): Promise<Ticket> => accepted(test.home[member], ticketId, command);
    };

    async function settingsWithOwnKind(): Promise<void> {
      const now = await test.home.admin.get('/organisation');
      const { name, settings } = bodyOf<{ name: string; settings: object }>(now, 200);
      const body = { name, settings: { ...settings, ownChanges: [ownKind] } };
      const headers = { 'if-match': now.headers.etag ?? '' };
      expect((await test.home.admin.put('/organisation', { body, headers })).status).toBe(200);
    }

    async function intake(): Promise<void> {
      const { dispatcher, technician } = test.home;
      test.setNow(new Date(start));
      const site = {
        client: 'Family Overwell',
        address: '1 Mill Lane',
        contact: { phone: '+44 1632 960 143' },
      };
      const { id: siteId } = bodyOf<{ id: string }>(await dispatcher.post('/sites', { body: site }), 201);
      const chain = await dispatcher.post(`/sites/${siteId}/chains`, { body: homeCinema() });
      const { id: chainId } = bodyOf<{ id: string }>(chain, 201);
      const symptom = { kind: 'dropOuts', perHour: null, pattern: { kind: 'random', rarely: true } };
      const body = {
        siteId,
        chainId,
        assigneeId: technician.id,
        intake: { symptom, affectedDisplays: ['projector'], content: 'any' },
      };
      ticketId = bodyOf<Ticket>(await dispatcher.post('/tickets', { body }), 201).id;
      await dispatcher.post(`/tickets/${ticketId}/diaries`, { body: { days: 21 } });
    }

    async function firstVisit(): Promise<void> {
      const technician = by('technician', 1);
      await technician({ type: 'reviewAudit', chainVersion: 1 });
      await technician({ type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] });
      await technician({ type: 'recordAsFound', chainVersion: 1 });
      await technician({
        type: 'enterLateChange',
        kind: 'reseat',
        target: { kind: 'link', linkId: 'L1' },
        madeAt: day(0.2),
        undoneAt: day(0.3),
        madeBy: 'The client, on the phone',
        seen: 'came',
      });
      await technician({
        type: 'waitFor',
        kind: 'client',
        what: 'The diary, to see how often it comes',
        actor: 'client',
        until: day(10),
      });
    }

    async function reported(days: readonly number[]): Promise<void> {
      test.setNow(new Date(start + 1 * dayMs));
      const { items } = bodyOf<{ items: DiaryWithCode[] }>(
        await test.home.technician.get(`/tickets/${ticketId}/diaries`),
        200,
      );
      for (const at of days) {
        test.setNow(new Date(start + at * dayMs));
        const report = randomUUID();
        const post = (form: Record<string, string>) =>
          test.request().post(`/d/${items[0]?.code}`).type('form').send(form).redirects(0);
        expect((await post({ what: 'now', report })).status).toBe(303);
        await post({ what: 'answers', report, lasted: 'someSeconds', cameBack: 'byItself' });
      }
    }

    async function secondVisit(): Promise<void> {
      const technician = by('technician', 10);
      await technician({ type: 'resumeWork', note: 'Four in ten days' });
      await technician({ type: 'acceptReproduction' });
      await technician({ type: 'goOnWithoutSide', reason: 'Nobody sees it come' });
      await technician({
        type: 'declareChange',
        kind: 'ownKind',
        ownKindId: ownKind.id,
        target: { kind: 'link', linkId: 'L4' },
        expected: 'It stays away',
      });
      await technician({ type: 'applyChange' });
      await technician({
        type: 'leaveInPlace',
        until: day(20),
        owner: 'The service desk',
        safety: {
          liesAcrossFloor: false,
          hangs: false,
          staysOpen: false,
          lacksCooling: false,
          defeatsProtection: false,
        },
        clientsYes: {
          name: 'Mrs Overwell',
          at: day(10),
          whatChanges: 'Two clips on the cable',
          howToUndo: 'Pull the clips off',
        },
        firmware: firmwareOf('3.10.2'),
      });
    }

    async function thirdVisit(): Promise<void> {
      const technician = by('technician', 20);
      const about = { kind: 'log', tie: { deviceId: 'processor' }, clock: { zone: 'UTC' } };
      const file = Buffer.from(`${day(12)} link lost on out1\n${day(15)} link lost on out1\n`);
      const log = await postForm(test, test.home.technician, ticketId, {
        about,
        file,
        name: 'processor.log',
      });
      const { id: evidenceId } = bodyOf<{ id: string }>(log, 201);
      await technician({
        type: 'endUnattended',
        firmware: firmwareOf('3.10.2'),
        logged: [{ occurredAt: day(15), evidenceId }],
      });
      await technician({ type: 'judgeRetest' });
      await technician({ type: 'restoreChange', note: '' });
      await technician({
        type: 'recordChoice',
        way: 'handOver',
        offered: [
          { way: 'goOn', minutes: 300, days: 1, sureness: 0.7, change: null },
          { way: 'handOver', minutes: 60, days: 2, sureness: 0.5, change: null },
        ],
        chosenBy: 'Mrs Overwell',
      });
    }

    async function waivers(): Promise<{ item: string; reason: string }[]> {
      const { missing } = bodyOf<Ticket>(await test.home.technician.get(`/tickets/${ticketId}`), 200);
      return [...new Set(missing.map(({ item }) => item))].map((item) => ({ item, reason: 'Not to be had' }));
    }

    async function handOver(): Promise<void> {
      const technician = by('technician', 21);
      const question = 'Which part of the link loses it?';
      await technician({ type: 'escalate', question, waivers: await waivers() });
      await keepSummary(1);
    }

    async function stepOfSecondLine(): Promise<void> {
      const support = by('support', 22);
      await support({ type: 'takeCase' });
      const change = { kind: 'reseat', target: { kind: 'link', linkId: 'L4' } };
      const directed = await support({ type: 'directStep', text: 'Press both ends in', change });
      const technician = by('technician', 23);
      await technician({
        type: 'answerRequest',
        requestId: directed.triage.requests.at(-1)?.id,
        text: 'Done: it clicked',
      });
      await technician({
        type: 'waitFor',
        kind: 'part',
        what: 'An optical cable of 12 m',
        actor: 'supplier',
        until: day(26),
      });
      await technician({ type: 'resumeWork', note: '' });
      const body = { type: 'escalate', question: 'And now?', waivers: await waivers() };
      const headers = { 'accept-language': 'de' };
      bodyOf(await test.home.technician.post(`/tickets/${ticketId}/commands`, { body, headers }), 200);
      await keepSummary(2);
    }

    async function keepSummary(version: number): Promise<void> {
      const { items } = bodyOf<{ items: Packet[] }>(
        await test.home.support.get(`/tickets/${ticketId}/packets`),
        200,
      );
      const id = items.find((one) => one.version === version)?.id;
      const { files } = bodyOf<Packet>(await test.home.support.get(`/packets/${id}`), 200);
      const file = files.find(({ path }) => path === 'data/summary.html');
      const stored = await test.services.evidenceStore.get(test.home.orgId, file?.sha256 ?? '');
      summaries.push(await text(stored));
    }
    /** What a reader sees of a section of a summary. */
    const sectionOf = (version: number, id: string): string => {
      const sections = [...(summaries[version - 1] ?? '').matchAll(/<section id="([^"]+)">.*?<\/section>/gs)];
      return textOf(sections.find(([, one]) => one === id)?.[0] ?? '');
    };

    it('tells what the client reported, how often in how many days, and with what in place', () => {
      const told = sectionOf(1, 'reports');
      expect(told).toContain(words.reports.sentence(words.reports.counted('5 times', '21', false)));
      const [fourth, fifth] = [day(9.2), day(15)].map((at) => told.indexOf(at.slice(0, 10)));
      expect(fourth).toBeGreaterThan(0);
      expect(told.slice(fifth)).toMatch(/^\S+ \S+ some seconds by itself 2 /);
      expect(sectionOf(1, 'in-short')).toContain(words.opening.reported);
    });

    it('tells of a change before arrival who made it and what they say, and of a kind of the firm’s own its figure', () => {
      const told = sectionOf(1, 'changes');
      expect(told).toContain(`${words.changes.madeBy} The client, on the phone`);
      expect(told).toContain(`${words.changes.seenMeanwhile} ${enTerms.lateFinding.came}`);
      expect(told).toMatch(ownAsSecond);
      expect(told).toContain(words.changes.ownFigure('40 %'));
      expect(told).not.toContain(words.changes.risk);
    });

    it('tells of what was left in: whose yes, how it is undone, what came by reports and by logs', () => {
      const told = sectionOf(1, 'left-in');
      expect(told).toMatch(ownAsSecond);
      for (const fact of ['Mrs Overwell', 'Two clips on the cable', 'Pull the clips off', 'The service desk'])
        expect(told).toContain(fact);
      expect(told).toContain(`${words.leftIn.reported} once`);
      expect(told).toContain('processor.txt');
      expect(told).toContain(words.leftIn.sameFirmware);
      expect(sectionOf(1, 'firmware')).toContain('3.10.2');
    });

    it('tells what the client chose between, and what was waited for', () => {
      expect(sectionOf(1, 'choices')).toContain('Mrs Overwell');
      expect(sectionOf(1, 'choices')).toContain('300 min');
      expect(sectionOf(1, 'waits')).toContain('The diary, to see how often it comes');
    });

    it('tells in its next version what is new, in the language that is asked for', () => {
      expect(summaries[1]).toContain('<html lang="de">');
      const news = sectionOf(2, 'news');
      expect(news).toContain('Done: it clicked');
      expect(news).toContain('An optical cable of 12 m');
      expect(news).not.toContain('Two clips on the cable');
      const requests = sectionOf(2, 'requests');
      expect(requests).toContain('Press both ends in');
      expect(requests).toContain('Done: it clicked');
    });
  },
);
