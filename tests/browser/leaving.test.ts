import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, type Session, signIn } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { bringToChanges, technicianOn } from './bring-to-changes.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

/** The end of a visit on the phone: waiting, the client's choice between the ways on, and the check before leaving. */
describe('the end of a visit, on the phone', () => {
  let stage: Stage;
  let technician: Session;
  let ticketId = '';
  beforeAll(async () => {
    stage = await openStage();
    ({ technician, ticketId } = await technicianOn(stage));
    await bringToChanges(technician, ticketId);
  });
  afterAll(() => stage.close());
  const ticketNow = async (): Promise<Ticket> =>
    expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200);
  const triage = `/app/visits/`;

  it('lets the ticket wait for a part, keeps what was typed, and goes on when it is there', async () => {
    const page = await stage.signedIn('brask', 'phone');
    const faults: string[] = [];
    await page.goto(`${triage}${ticketId}/triage`);
    await page.getByRole('link', { name: 'Let it wait for something' }).click();
    await page.getByRole('button', { name: 'Let it wait' }).click();
    await page.getByText('Say what, and until which day.').waitFor();
    await page.getByLabel('What exactly?').fill('An optical cable of 12 m');
    await page.reload();
    await expect.poll(() => page.getByLabel('What exactly?').inputValue()).toBe('An optical cable of 12 m');
    const inAWeek = new Date(Date.now() + 7 * 86_400_000).toISOString().slice(0, 10);
    await page.getByLabel('Until which day?').fill(inAWeek);
    await keepScreenshot(page, 'wait-form');
    faults.push(...(await faultsInEveryLook(page, 'wait-form')));
    await page.getByRole('button', { name: 'Let it wait' }).click();
    await page.getByRole('heading', { level: 1, name: 'The ticket waits' }).waitFor();
    await page.getByText('An optical cable of 12 m').first().waitFor();
    await keepScreenshot(page, 'waiting');
    faults.push(...(await faultsInEveryLook(page, 'waiting')));
    await page.getByText('All sent').waitFor();
    expect((await ticketNow()).triage.waits).toMatchObject([{ kind: 'part', ended: null }]);
    await page.getByRole('button', { name: 'It is there: go on with the work' }).click();
    await page.getByRole('heading', { level: 1, name: 'The ticket waits' }).waitFor({ state: 'detached' });
    await page.getByText('All sent').waitFor();
    expect((await ticketNow()).triage.waits).toMatchObject([{ ended: { because: 'resumed' } }]);
    expect(faults).toEqual([]);
  });

  it('shows the ways on where testing costs more than it may bring, and writes down what the client chose', async () => {
    const admin = await signIn(overHttp(stage.base), firm.handle, 'runa@lanternrow.example');
    const now = await admin.get<{ name: string; settings: object }>('/organisation');
    const { name, settings } = expectStatus(now, 200);
    const faultModel = { 'planning/escalation/minutes': 1 };
    expectStatus(
      await admin.put('/organisation', { name, settings: { ...settings, faultModel } }, now.etag),
      200,
    );
    const page = await stage.signedIn('brask', 'phone');
    await page.goto(`${triage}${ticketId}/triage`);
    // Before it gives up, the plan asks whether anything else shows it.
    await page.getByRole('button', { name: 'Nobody can say' }).click();
    await page.getByRole('heading', { level: 1, name: 'What does the client want?' }).waitFor();
    await keepScreenshot(page, 'ways');
    expect(await faultsInEveryLook(page, 'ways')).toEqual([]);
    await page.getByRole('button', { name: 'Go on testing' }).click();
    await page.getByText('Say who chose', { exact: false }).waitFor();
    await page.getByLabel('Who chose?').fill('Mrs N. N.');
    await page.getByRole('button', { name: 'Go on testing' }).click();
    await page
      .getByRole('heading', { level: 1, name: 'What does the client want?' })
      .waitFor({ state: 'detached' });
    await page.getByText('All sent').waitFor();
    const [chosen] = (await ticketNow()).triage.choices;
    expect(chosen).toMatchObject({ way: 'goOn', chosenBy: 'Mrs N. N.' });
    expect(chosen?.offered.length).toBeGreaterThan(1);
  });

  it('checks everything once before leaving, keeps the answers over a reload, and takes “not checked”', async () => {
    const place = { kind: 'link', linkId: (await ticketNow()).triage.asFound?.chain.links[0]?.id ?? '' };
    const offered = [{ way: 'replace', minutes: 40, days: 14, sureness: 0.6, change: null }];
    await technician.command(ticketId, { type: 'recordChoice', way: 'replace', offered, chosenBy: 'N. N.' });
    await technician.command(ticketId, { type: 'replaceOnSuspicion', place, what: 'A new cable' });
    await technician.command(ticketId, { type: 'finishRemedy', asLeftChainVersion: 1 });
    const page = await stage.signedIn('brask', 'phone');
    const faults: string[] = [];
    await page.goto(`${triage}${ticketId}/triage`);
    await page.getByRole('button', { name: 'Check everything before leaving' }).click();
    const sound = page.getByRole('group', { name: 'Sound' });
    await sound.getByText('works', { exact: true }).click();
    await page.reload();
    await page.getByRole('button', { name: 'Check everything before leaving' }).click();
    await expect.poll(() => sound.getByLabel('works', { exact: true }).isChecked()).toBe(true);
    await keepScreenshot(page, 'leaving');
    faults.push(...(await faultsInEveryLook(page, 'leaving')));
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('heading', { level: 1, name: 'Before you leave' }).waitFor({ state: 'detached' });
    await page.getByText('All sent').waitFor();
    const { leavingCheck } = (await ticketNow()).triage;
    expect(leavingCheck).toMatchObject({ sound: 'works', usualStart: 'notChecked' });
    expect(leavingCheck?.pictures.length).toBeGreaterThan(1);
    await keepScreenshot(page, 'leaving-done');
    expect(faults).toEqual([]);
  });

  it('asks on the phone how an unproven repair holds', async () => {
    await technician.command(ticketId, { type: 'close', note: '' });
    const page = await stage.signedIn('brask', 'phone');
    await page.goto(`${triage}${ticketId}/triage`);
    await page.getByRole('heading', { name: 'Does the repair hold?' }).waitFor();
    await keepScreenshot(page, 'follow-up');
    expect(await faultsInEveryLook(page, 'follow-up')).toEqual([]);
    await page.getByRole('button', { name: 'It holds' }).click();
    await page.getByRole('heading', { name: 'Does the repair hold?' }).waitFor({ state: 'detached' });
    await page.getByText('All sent').waitFor();
    expect((await ticketNow()).triage.choices).toContainEqual(
      expect.objectContaining({ outcome: expect.objectContaining({ kind: 'held' }) }),
    );
  });
});
