import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectStatus, type Session } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { fromBaselineToChanges, recordBaseline, technicianOn } from './bring-to-changes.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

describe('a fault that nobody can sit through, on the phone', () => {
  let stage: Stage;
  let technician: Session;
  let ticketId = '';
  beforeAll(async () => {
    stage = await openStage();
    ({ technician, ticketId } = await technicianOn(stage));
    await recordBaseline(technician, ticketId);
  });
  afterAll(() => stage.close());
  const unattended = async () =>
    expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200).triage.unattended;

  it('leads to the client’s diary, and waits for what it brings', async () => {
    const { triage } = expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200);
    const symptom = { ...triage.symptom, perHour: 0.02, pattern: { kind: 'random', rarely: true } };
    await technician.command(ticketId, { type: 'amendIntake', symptom });
    const page = await stage.signedIn('brask', 'phone');
    await page.goto(`/app/visits/${ticketId}/triage`);
    await page.getByRole('link', { name: 'The client’s diary' }).waitFor();
    await page.getByRole('heading', { level: 1, name: /^Find out how often/ }).waitFor();
    await keepScreenshot(page, 'rare-fault');
    expect(await faultsInEveryLook(page, 'rare-fault')).toEqual([]);
    await page.getByRole('link', { name: 'The client’s diary' }).click();
    await page.waitForURL(`**/app/visits/${ticketId}/diary`);
    await page.getByRole('heading', { level: 1 }).waitFor();
  });

  it('lets a change stay in: until when, with whose yes, how it is undone, and what ends it', async () => {
    await fromBaselineToChanges(technician, ticketId);
    const target = { kind: 'device', deviceId: 'projector' };
    await technician.command(ticketId, {
      type: 'declareChange',
      kind: 'otherChange',
      detail: 'Fed the receiver from the other circuit',
      mayStay: true,
      target,
      expected: 'It stays away',
    });
    await technician.command(ticketId, { type: 'applyChange' });
    const page = await stage.signedIn('brask', 'phone');
    const faults: string[] = [];
    const look = async (name: string) => {
      await keepScreenshot(page, name);
      faults.push(...(await faultsInEveryLook(page, name)));
    };
    await page.goto(`/app/visits/${ticketId}/triage`);
    await page.getByRole('link', { name: 'Leave it in between visits' }).click();
    await page.getByRole('button', { name: 'It stays in until then' }).click();
    await page.getByText('All of these have to be said.').waitFor();
    await page.getByLabel('Who sees to it that it ends?').fill('Brask');
    await page.getByLabel('Who said yes?').fill('N. N.');
    await page.getByLabel('What is different for them meanwhile?').fill('A cable on the shelf');
    await page.getByLabel('How do they undo it?').fill('Plug the old cable in again');
    await page.getByLabel('Something lies across a floor').check();
    await page
      .getByRole('button', { name: /^Still / })
      .first()
      .click();
    await look('left-in-form');
    await page.getByRole('button', { name: 'It stays in until then' }).click();
    await page.getByRole('alert').waitFor();
    expect(await unattended()).toEqual([]);
    await page.reload();
    const across = page.getByLabel('Something lies across a floor');
    await expect.poll(() => across.isChecked()).toBe(true);
    await across.uncheck();
    await page.getByRole('button', { name: 'It stays in until then' }).click();
    await page.getByRole('heading', { level: 1, name: 'The change was left in' }).waitFor();
    await page.getByText('Plug the old cable in again').waitFor();
    await look('left-in');
    await page.getByText('All sent').waitFor();
    const [left] = await unattended();
    expect(left).toMatchObject({ owner: 'Brask', endedAt: null, safety: { liesAcrossFloor: false } });
    expect(left?.firmwareBefore.some(({ level }) => level !== null)).toBe(true);

    await page.getByText('No log of these days is here yet', { exact: false }).waitFor();
    await page
      .getByRole('button', { name: /^Still / })
      .first()
      .click();
    await page.getByRole('link', { name: 'Hand in a log' }).click();
    await page.locator('#log').getByLabel('From which device?').selectOption({ label: 'Cinema processor' });
    const line = `${new Date().toISOString()} link lost\n`;
    await page
      .locator('#log input[type=file]')
      .setInputFiles({ name: 'own.log', mimeType: 'text/plain', buffer: Buffer.from(line) });
    await page.getByText('All sent').waitFor();
    await page.goto(`/app/visits/${ticketId}/triage`);
    await page.getByText('One log of these days is here.').waitFor();
    await page.getByLabel('When does the log show the fault?').fill('2020-01-01T10:00:00');
    await page.getByRole('button', { name: 'Add this moment' }).click();
    await page.getByText('That is not a moment of these days.').waitFor();
    await look('left-in-logs');
    await page.getByRole('button', { name: 'These days are over' }).click();
    await page
      .getByRole('heading', { level: 1, name: 'The change was left in' })
      .waitFor({ state: 'detached' });
    await page.getByText('All sent').waitFor();
    const [ended] = await unattended();
    expect(ended?.endedAt).not.toBeNull();
    await page.getByRole('button', { name: 'Judge by hand' }).waitFor();
    await look('left-in-judge');
    expect(faults).toEqual([]);
  });
});
