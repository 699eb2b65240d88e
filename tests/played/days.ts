import { randomUUID } from 'node:crypto';
import type { DiaryWithCode } from '../../shared/contract/diary.ts';
import { diaryDays } from '../../shared/contract/diary-names.ts';
import type { House } from '../support/house/house.ts';
import type { TestApp } from '../support/test-app.ts';
import { bodyOf } from '../support/tickets.ts';

const dayMin = 1440;
/** So long it is used on a day; whoever lives there sees it then, and says so a few times, not forever. Assumed. */
const usedMin = 300;
const mostReports = 3;

/** What goes on in a house between visits: it is used, and whoever lives there taps when the fault comes. */
export class Days {
  readonly #test: TestApp;
  readonly #house: House;
  readonly #ticketId: string;
  #code: { code: string; untilMs: number } | null = null;

  constructor(test: TestApp, house: House, ticketId: string) {
    this.#test = test;
    this.#house = house;
    this.#ticketId = ticketId;
  }

  /** Lives through days until then. @returns the moment, in ms, at which they end: earlier where enough was reported */
  async pass(fromMs: number, untilMs: number): Promise<number> {
    let [nowMs, reports] = [fromMs, 0];
    const at = (ms: number): void => {
      this.#house.pass(Math.max(0, ms - nowMs) / 60_000);
      nowMs = Math.max(nowMs, ms);
      this.#test.setNow(new Date(nowMs));
    };
    while (nowMs < untilMs && reports < mostReports) {
      this.#house.startDay();
      const endOfUseMs = Math.min(untilMs, nowMs + usedMin * 60_000);
      while (reports < mostReports) {
        const seenMin = this.#house.untilSeen((endOfUseMs - nowMs) / 60_000);
        if (seenMin === null) break;
        at(nowMs + seenMin * 60_000);
        await this.#report(untilMs, nowMs);
        reports += 1;
        // The same trouble is not told again while it lasts.
        at(Math.min(endOfUseMs, nowMs + 5 * 60_000));
      }
      at(Math.min(untilMs, nowMs + dayMin * 60_000));
    }
    return nowMs;
  }

  /** An open diary, for as long as there is one; whoever opens it does so before the days begin. */
  async open(fromMs: number, untilMs: number): Promise<void> {
    if (this.#code !== null && this.#code.untilMs >= untilMs) return;
    const days = Math.min(diaryDays.most, Math.ceil((untilMs - fromMs) / (dayMin * 60_000)) + 1);
    const address = `/tickets/${this.#ticketId}/diaries`;
    const { dispatcher } = this.#test.home;
    const { id } = bodyOf<{ id: string }>(await dispatcher.post(address, { body: { days } }), 201);
    const { items } = bodyOf<{ items: DiaryWithCode[] }>(await dispatcher.get(address), 200);
    const code = items.find((each) => each.id === id)?.code;
    if (code == null) throw new Error('the diary has no code');
    this.#code = { code, untilMs: fromMs + days * dayMin * 60_000 };
  }

  async #report(untilMs: number, nowMs: number): Promise<void> {
    await this.open(nowMs, untilMs);
    const form = { report: randomUUID(), what: 'now' };
    const answer = await this.#test
      .request()
      .post(`/d/${this.#code?.code}`)
      .type('form')
      .send(form)
      .redirects(0);
    if (answer.status !== 303) throw new Error(`the diary answered ${answer.status}`);
  }
}
