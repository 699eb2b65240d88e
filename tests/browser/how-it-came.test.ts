import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectStatus, type Session } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { patternTriggers } from '../../shared/contract/triage-names.ts';
import { recordBaseline, technicianOn } from './bring-to-changes.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage, waitMs } from './stage.ts';

describe('a fault of which nobody knows how it comes, on the phone', () => {
  let stage: Stage;
  let technician: Session;
  let ticketId = '';
  beforeAll(async () => {
    stage = await openStage();
    ({ technician, ticketId } = await technicianOn(stage));
    await recordBaseline(technician, ticketId);
    const { triage } = expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200);
    const symptom = { ...triage.symptom, kind: 'noPicture', perHour: null, pattern: { kind: 'notKnown' } };
    await technician.command(ticketId, { type: 'amendIntake', symptom });
  });
  afterAll(() => stage.close());

  it('is tried before it is waited for, as the plan says', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await page.goto(`/app/visits/${ticketId}/triage`);
    await page.getByRole('heading', { level: 1, name: 'Try until the fault comes' }).waitFor();
    await keepScreenshot(page, 'tries-first');
    expect(await faultsInEveryLook(page, 'tries-first')).toEqual([]);
    await page.getByRole('button', { name: 'Start trying' }).click();
    await page.getByLabel('The switching, in words').fill('Off and on, another source, another title');
    await page.getByRole('button', { name: 'Start trying' }).click();
    const watches = async () =>
      expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200).triage.watches;
    await expect.poll(watches, { timeout: waitMs }).toMatchObject([{ mode: 'trigger', triggerKind: null }]);
    await page.context().close();
  });

  it('asks what made it come in one question, keeps the answer over a reload, and goes on by it', async () => {
    await technician.command(ticketId, { type: 'recordTry' });
    await technician.command(ticketId, { type: 'recordOccurrence' });
    await technician.command(ticketId, { type: 'endWatch' });
    const page = await stage.signedIn('brask', 'phone');
    await page.goto(`/app/visits/${ticketId}/triage`);
    const question = page.getByLabel('What made it come?');
    await question.waitFor();
    // Every trigger that has a name, by itself, always there, and no answer.
    expect(await question.locator('option').count()).toBe(patternTriggers.length - 1 + 3);
    expect(await page.getByRole('button', { name: /^It (came|is there)/ }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'That is how it came' }).count()).toBe(0);
    await keepScreenshot(page, 'how-it-came');
    expect(await faultsInEveryLook(page, 'how-it-came')).toEqual([]);
    await question.selectOption({ label: 'It came at a change of source' });
    await page.reload();
    await page.getByRole('button', { name: 'That is how it came' }).click();
    await question.waitFor({ state: 'detached' });
    await page.getByText('All sent').waitFor();
    const { triage } = expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200);
    expect(triage.symptom.pattern).toEqual({ kind: 'trigger', trigger: 'sourceChange' });
  });
});
