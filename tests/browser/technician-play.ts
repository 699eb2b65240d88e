import type { BrowserContext, Page } from 'playwright-core';
import { expect } from 'vitest';
import { waitMs } from './stage.ts';

/** What lies between two steps: a cut line, a reload, a killed tab. Gives the page to go on with. */
export type Boundary = (page: Page) => Promise<Page>;
type Look = (page: Page, name: string) => Promise<void>;

const minuteMs = 60_000;

/**
 * A technician who does what the screens say, in a house where a cable in the wall fails every twenty minutes unless
 * it has less to carry. Every step goes through a screen; `steps` is what the ticket's log must hold afterwards.
 */
export class Technician {
  readonly steps: string[] = [];

  private page: Page;
  private readonly on: {
    context: BrowserContext;
    boundary: Boundary;
    look: Look;
    /** A change that the technician knows better than the plan, from the whole list; null: the plan's own. */
    ownChoice: RegExp | null;
    /** Does one thing after the other, where one tap would do both. */
    apart?: boolean;
  };

  constructor(page: Page, on: Technician['on']) {
    this.page = page;
    this.on = on;
  }

  private look: Look = (page, name) => this.on.look(page, name);

  get screen(): Page {
    return this.page;
  }

  heading = (name: string | RegExp) => this.page.getByRole('heading', { level: 1, name });
  private button = (name: string | RegExp) => this.page.getByRole('button', { name });
  private link = (name: string | RegExp) => this.page.getByRole('link', { name });

  /** Does a step that the ticket's log will hold, between two boundaries. */
  private async step(events: string | readonly string[], act: () => Promise<void>): Promise<void> {
    const done = [events].flat();
    const before = await this.waiting();
    await act();
    // A step counts from when the screen says that it is kept.
    const isOffline = !(await this.page.evaluate('navigator.onLine'));
    if (isOffline) await expect.poll(this.waiting, { timeout: waitMs }).toBe(before + done.length);
    this.steps.push(...done);
    this.page = await this.on.boundary(this.page);
  }

  /** How many steps the screen says are still to be sent. */
  private waiting = async (): Promise<number> =>
    Number.parseInt((await this.link(/^Outbox/).textContent())?.replace(/\D/g, '') || '0', 10);

  private press = (events: string | readonly string[], name: string | RegExp): Promise<void> =>
    this.step(events, () => this.button(name).first().click());

  /** Time goes by on site. */
  private async pass(minutes: number): Promise<void> {
    // A leap of the clock would cut what is on its way.
    if (await this.page.evaluate('navigator.onLine')) await this.page.getByText('All sent').waitFor();
    await this.on.context.clock.fastForward(minutes * minuteMs);
  }

  async playToEscalation(): Promise<void> {
    await this.link('Go on with the triage').click();
    await this.baseline();
    await this.reproduce();
    for (let turn = 0; turn < 12 && !(await this.isShown()); turn += 1) await this.nextTest();
    await this.escalate();
  }

  /** The whole visit by the shortest way: what belongs together is one tap. */
  async playToClose(): Promise<void> {
    await this.link('Go on with the triage').click();
    await this.baseline();
    await this.reproduce();
    for (let turn = 0; turn < 12 && !(await this.isNaming()); turn += 1) await this.nextTest();
    await this.press('nameCulprit', 'Name it');
    await this.heading(/: how does this end\?$/).waitFor();
    await this.page.getByLabel('What is done?').fill('An optical cable in the conduit.');
    await this.press('chooseRemedy', 'Settle on this');
    await this.press(['finishRemedy', 'startWatch'], 'It is done: watch whether it holds');
    await this.heading('Watching whether the remedy holds').waitFor();
    await this.pass(180);
    await this.page.getByText('Quiet long enough').waitFor();
    await this.press('endWatch', 'End the watch');
    await this.button('Close the ticket').click();
    await this.step('close', () =>
      this.page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).click(),
    );
    await this.heading('The ticket is closed').waitFor();
  }

  private async baseline(): Promise<void> {
    await this.heading('Look through the audit').waitFor();
    await this.page.getByText('Receiver IN 3').first().waitFor();
    await this.look(this.page, 'audit');
    await this.press('reviewAudit', 'I have looked through it');
    await this.heading('What has changed since it last worked?').waitFor();
    await this.page.getByLabel('Building work').check();
    await this.page.getByLabel('What exactly, and when?').fill('A shelf on the projector wall, a month ago');
    await this.look(this.page, 'what-changed');
    await this.press('answerWhatChanged', 'That is what they say');
    await this.heading('Is the chain as it is drawn?').waitFor();
    await this.look(this.page, 'as-found');
    await this.press('recordAsFound', 'Yes: record it as found');
  }

  private async reproduce(): Promise<void> {
    await this.heading('Watch for the fault, and touch nothing').waitFor();
    await this.look(this.page, 'reproduce');
    await this.press('startWatch', 'Start watching');
    await this.heading('Watching for the fault, nothing changed').waitFor();
    for (const minutes of [11, 18, 23]) {
      await this.pass(minutes);
      await this.press('recordOccurrence', 'It happened');
    }
    await this.page.locator('.watch-count', { hasText: '3' }).waitFor();
    await this.look(this.page, 'watch');
    if (this.on.apart) await this.undoOne();
    await this.pass(8);
    if (!this.on.apart) return this.press(['endWatch', 'acceptReproduction'], /^End it\. Seen 3 times/);
    await this.press('endWatch', 'End the watch');
    await this.look(this.page, 'reproduced');
    await this.press('acceptReproduction', /^Seen 3 times/);
  }

  /** The thumb slips, and it is taken back. */
  private async undoOne(): Promise<void> {
    await this.pass(1);
    await this.press('recordOccurrence', 'It happened');
    await this.page.locator('.watch-count', { hasText: '4' }).waitFor();
    await this.button('Undo the last').click();
    await this.look(this.page, 'withdraw');
    await this.press('withdrawOccurrence', 'Withdraw it');
    await this.page.locator('.watch-count', { hasText: '3' }).waitFor();
  }

  /** The question that the screen comes to rest on. */
  private async settle(): Promise<string> {
    let [before, now] = ['', await this.title()];
    while (now !== before || now.startsWith('Working out')) {
      await this.page.waitForTimeout(300);
      [before, now] = [now, await this.title()];
    }
    return now;
  }

  private title = async (): Promise<string> => (await this.heading(/./).textContent()) ?? '';

  private isShown = async (): Promise<boolean> =>
    /^The culprit is shown|^Name the culprit/.test(await this.settle());

  private isNaming = async (): Promise<boolean> => (await this.settle()).startsWith('Name the culprit');

  private async nextTest(): Promise<void> {
    const title = await this.settle();
    if (title.startsWith('Put up the menu of')) return this.watchMenu(title);
    if (title.startsWith('It cleared')) return this.seeItReturn();
    const answers = this.page.locator('.answers');
    if (await answers.getByRole('button', { name: 'Go back to the menus' }).isVisible())
      return this.press('locateSideAgain', 'Go back to the menus');
    return this.makeChange();
  }

  /**
   * Only the projector draws its menu behind the cable that fails. The side panel never shows the fault, so where its
   * menu comes first, the next best is watched.
   */
  private async watchMenu(title: string): Promise<void> {
    await this.look(this.page, 'menu');
    const isSidePanel = title.endsWith('Side panel');
    const other = this.page.getByText(/^Put up the menu of /).nth(1);
    const watched = isSidePanel ? ((await other.textContent()) ?? '') : title;
    const stays = watched.endsWith('Projector');
    const start = this.button('The menu is up: start watching').nth(isSidePanel ? 1 : 0);
    await this.step('startWatch', () => start.click());
    await this.heading(/^Watching with the menu/).waitFor();
    await this.look(this.page, 'watch-menu');
    await this.pass(20);
    await this.press(
      'recordOccurrence',
      stays ? 'It happened: the menu stayed' : 'It happened: the menu vanished too',
    );
    if (!this.on.apart)
      return this.press(
        ['endWatch', 'concludeSide'],
        stays ? /^End it\. The menu stayed/ : /^End it\. The menu vanished/,
      );
    await this.pass(2);
    await this.press('endWatch', 'End the watch');
    await this.heading(
      stays ? /^The menu stayed: it lies before/ : /^The menu vanished: it lies behind/,
    ).waitFor();
    await this.look(this.page, 'conclude');
    await this.press('concludeSide', 'Conclude this side');
  }

  private async makeChange(): Promise<void> {
    await this.look(this.page, 'next-test');
    await this.declare();
    await this.readSettings('before');
    await this.heading(/, and nothing else$/).waitFor();
    const cleared = /temporary cable|Replace the cable|output bandwidth|Move the processor/.test(
      await this.title(),
    );
    if (this.on.apart) await this.refuseSecond();
    await this.look(this.page, 'make');
    await this.retest(cleared);
    await this.look(this.page, 'judged');
    if (cleared && !this.on.apart) return this.putBackAndWatch();
    await this.press('restoreChange', /^It is put back$/);
    await this.page.locator('.in-place').waitFor({ state: 'detached' });
  }

  /** By the plan's one tap, or the technician's own choice by its form. */
  private async declare(): Promise<void> {
    const begin = this.page.locator('.answers').getByRole('button', { name: 'Go on: change something else' });
    if (this.on.ownChoice === null) {
      const begins = (await begin.isVisible()) ? ['beginSubstitution'] : [];
      const does = this.page.locator('.answers').getByRole('button', { name: 'I will do this' });
      await this.step([...begins, 'declareChange'], () => does.click());
    } else {
      if (await begin.isVisible()) await this.press('beginSubstitution', 'Go on: change something else');
      await this.link('Do something else').click();
      await this.heading('Choose what to change').waitFor();
      await this.look(this.page, 'changes');
      await this.link('Something else, in your own words').waitFor();
      const choice = this.link(this.on.ownChoice).first();
      // The likely ones are in sight, all others behind one tap.
      if (!(await choice.isVisible())) await this.page.getByText('All others that make sense here').click();
      await choice.click();
      await this.button('Declare this one change').waitFor();
      await this.look(this.page, 'declare');
      await this.press('declareChange', 'Declare this one change');
    }
  }

  /** From the change being made to its verdict. */
  private async retest(cleared: boolean): Promise<void> {
    const both = this.button('It is made: watch from now');
    if (!this.on.apart && (await both.isVisible()))
      await this.step(['applyChange', 'startWatch'], () => both.click());
    else {
      await this.press('applyChange', /^It is made$/);
      await this.readSettings('after');
      await this.heading('It is in place: watch').waitFor();
      await this.page.locator('.in-place').waitFor();
      await this.look(this.page, 'in-place');
      await this.press('startWatch', 'Start the retest');
    }
    await this.heading(/^Watching with the change in place/).waitFor();
    await this.pass(25);
    await this.look(this.page, 'retest');
    if (!cleared) await this.press('recordOccurrence', 'It happened');
    else {
      await this.pass(90);
      await this.page.getByText('Quiet long enough').waitFor();
    }
    const verdict = cleared ? 'Judge: cleared' : 'Judge: persists';
    if (!this.on.apart) await this.press(['endWatch', 'judgeRetest'], `End it. ${verdict}`);
    else {
      await this.press('endWatch', 'End the watch');
      await this.heading(cleared ? 'The fault stayed away' : 'The fault is still there').waitFor();
      await this.look(this.page, 'judge');
      await this.press('judgeRetest', verdict);
    }
    await this.heading(cleared ? 'It cleared the fault' : 'That was not it').waitFor();
  }

  private async readSettings(phase: 'before' | 'after'): Promise<void> {
    const next = {
      before: /^Read the settings before|, and nothing else$/,
      after: /^Read the settings after|^It is in place/,
    };
    await this.heading(next[phase]).waitFor();
    if (!(await this.heading(`Read the settings ${phase} the change`).isVisible())) return;
    await this.look(this.page, `settings-${phase}`);
    await this.press('evidenceAdded', 'They are as shown: record them');
  }

  /** One change at a time, and it says so before a form is filled in. */
  private async refuseSecond(): Promise<void> {
    await this.link('Do something else').click();
    await this.page.getByRole('alert').getByText('One change at a time', { exact: true }).waitFor();
    await this.look(this.page, 'second-change-refused');
    await this.link('Back to the question').click();
    await this.heading(/, and nothing else$/).waitFor();
  }

  private async putBackAndWatch(): Promise<void> {
    await this.press(['restoreChange', 'startWatch'], 'It is put back: watch for its return');
    await this.heading(/watching for its return$/).waitFor();
    await this.pass(20);
    await this.press('recordOccurrence', 'It happened');
    await this.press('endWatch', 'End it. Name the culprit');
  }

  private async seeItReturn(): Promise<void> {
    await this.look(this.page, 'confirm');
    await this.press('startWatch', 'Start watching');
    await this.heading(/watching for its return$/).waitFor();
    await this.pass(20);
    await this.press('recordOccurrence', 'It happened');
    await this.press('endWatch', 'End the watch');
  }

  private async escalate(): Promise<void> {
    if (await this.isNaming()) await this.link('Back to the question').click();
    await this.heading(/^The culprit is shown/).waitFor();
    await this.look(this.page, 'shown');
    await this.link('Hand it to second line').first().click();
    await this.heading('What do you ask second line?').waitFor();
    await this.button('Hand it over').click();
    await this.page.getByText('Say it in at least three letters.').first().waitFor();
    await this.page
      .getByLabel('Your question')
      .fill('With less to carry it stays away: the cable in the wall. Can output A be the cause as well?');
    await this.button('Hand it over').click();
    await this.page.getByRole('alert').waitFor();
    await this.look(this.page, 'incomplete');
    const boxes = this.page.getByRole('checkbox', { name: /^It can’t be had/ });
    for (const box of await boxes.all()) await box.check();
    const reasons = this.page.getByLabel(/^Why not/);
    for (const reason of await reasons.all()) await reason.fill('Left at the workshop');
    await this.look(this.page, 'escalate');
    await this.press('escalate', 'Hand it over');
    await this.heading('Second line has the case').waitFor();
    await this.look(this.page, 'waiting');
  }
}
