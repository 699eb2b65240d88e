import type { AddressInfo } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LogCheck } from '../../shared/contract/log-check.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import type { OutboxEntry } from '../../src/web/store/outbox-entry.ts';
import { type FrozenBlob, type FrozenPhone, frozenStore, readFrozenPhone } from '../frozen/frozen-1.ts';
import { type FrozenApp, openFrozenApp } from '../frozen/frozen-1-app.ts';
import type { TestMember } from '../support/test-app.ts';
import { bodyOf } from '../support/tickets.ts';
import { deviceIn, keepScreenshot, openBrowser, signInOn } from './stage.ts';

const phone = readFrozenPhone();

type Stores = FrozenPhone['databases'][number]['stores'];
const own = phone.databases.find(({ name }) => name.endsWith(phone.memberId));

/** What a phone of version 1 held, put into the stores of this browser: as version 1 had made them. */
async function fillAsVersion1(page: Page): Promise<void> {
  await page.goto('/');
  await page.getByLabel('Organisation').waitFor();
  await page.evaluate(makeStores, [own?.name ?? '', own?.stores ?? []] as const);
  await page.evaluate(fillStores, [own?.name ?? '', own?.stores ?? []] as const);
}

/** Runs in the page. */
const makeStores = ([name, stores]: readonly [string, Stores]): Promise<void> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      for (const store of stores)
        request.result.createObjectStore(
          store.name,
          store.keyPath === null ? {} : { keyPath: store.keyPath, autoIncrement: store.autoIncrement },
        );
    };
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      request.result.close();
      resolve();
    };
  });

/** Runs in the page. */
const fillStores = ([name, stores]: readonly [string, Stores]): Promise<void> =>
  new Promise((resolve, reject) => {
    const blobOf = ({ blob }: FrozenBlob): Blob =>
      new Blob([Uint8Array.from(atob(blob.base64), (character) => character.charCodeAt(0))], blob);
    const request = indexedDB.open(name);
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const transaction = request.result.transaction(
        stores.map((store) => store.name),
        'readwrite',
      );
      for (const { name: store, keyPath, entries } of stores)
        for (const { key, value } of entries)
          if (keyPath === null)
            transaction.objectStore(store).put(store === 'files' ? blobOf(value as FrozenBlob) : value, key);
          else transaction.objectStore(store).put(value);
      transaction.onerror = () => reject(transaction.error);
      transaction.oncomplete = () => {
        request.result.close();
        resolve();
      };
    };
  });

describe('a phone of version 1, with what it kept and what it had yet to send', () => {
  let server: FrozenApp;
  let technician: TestMember;
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    server = await openFrozenApp('embedded');
    technician = await server.signIn('brask@lanternrow.example');
    await server.app.listen({ host: '127.0.0.1', port: 0 });
    browser = await openBrowser();
    const { port } = server.app.server.address() as AddressInfo;
    page = await (await deviceIn(browser, `http://127.0.0.1:${port}`, 'phone', 'light', 'kept')).newPage();
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  it('meets today’s client and server, and loses nothing', async () => {
    const outbox = frozenStore(phone, 'outbox').map(({ value }) => value as OutboxEntry);
    const ids = [phone.tickets.visit, phone.tickets.arrived];
    const sent = outbox.filter(({ ticketId }) => ids.includes(ticketId));
    for (const entry of sent.filter(({ state }) => state === 'sending')) await server.hashAsHere(entry);
    await fillAsVersion1(page);
    await signInOn(page, 'brask');
    await page.getByRole('heading', { name: 'My visits' }).waitFor();
    const isThrough = async (id: string, at: number): Promise<boolean> => {
      const ticket = bodyOf<Ticket>(await technician.get(`/tickets/${id}`), 200);
      return ticket.state === (phone.afterSending[at] as { state: string }).state;
    };
    for (const [at, id] of ids.entries())
      await expect.poll(() => isThrough(id, at), { timeout: 60_000 }).toBe(true);
    await keepScreenshot(page, 'phone-of-version-1');
    for (const [at, id] of ids.entries()) {
      const then = phone.afterSending[at] as {
        triage: { watches: object[]; changes: object[]; evidence: object[] };
      };
      const { triage, sequence } = bodyOf<Ticket>(await technician.get(`/tickets/${id}`), 200);
      for (const part of ['watches', 'changes'] as const)
        expect(triage[part].map((each) => each.id)).toEqual(
          then.triage[part].map((each) => (each as { id: string }).id),
        );
      await expect
        .poll(
          async () => bodyOf<Ticket>(await technician.get(`/tickets/${id}`), 200).triage.evidence.length,
          {
            timeout: 60_000,
          },
        )
        .toBe(then.triage.evidence.length);
      const check = bodyOf<LogCheck>(await technician.get(`/tickets/${id}/log/check`), 200);
      expect(check.isClean).toBe(true);
      expect(sequence).toBeGreaterThan(0);
      await page.goto(`/app/visits/${id}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
    }
    const left = await page.evaluate(
      ([name]) =>
        new Promise<{ ticketId: string }[]>((resolve) => {
          const request = indexedDB.open(name ?? '');
          request.onsuccess = () => {
            const all = request.result.transaction('outbox').objectStore('outbox').getAll();
            all.onsuccess = () => resolve(all.result);
          };
        }),
      [`halfsplit-member-${phone.memberId}`],
    );
    expect(left.filter(({ ticketId }) => ids.includes(ticketId))).toEqual([]);
    expect(left).toHaveLength(outbox.length - sent.length);
  });
});
