import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LogCheck } from '../../../shared/contract/log-check.ts';
import { MACHINE_VERSION } from '../../../state-machines/index.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, bringToReproduce, openTestTicket } from '../../support/tickets.ts';

describe.each(databaseKinds())('the check of a log on the %s database', (kind) => {
  let test: TestApp;
  let ticketId: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  /** A ticket with five events, damaged behind the server's back; `$1` is the ticket. */
  async function checkAfter(...damage: string[]): Promise<LogCheck> {
    ({ ticketId } = await openTestTicket(test));
    await bringToReproduce(test.home.technician, ticketId);
    await accepted(test.home.technician, ticketId, { type: 'note', text: 'Hums.' });
    for (const sql of damage) await test.tamper(sql, [ticketId]);
    return bodyOf<LogCheck>(await test.home.support.get(`/tickets/${ticketId}/log/check`), 200);
  }

  it('says what was compared, and of which versions', async () => {
    const check = await checkAfter();
    expect(check).toMatchObject({
      isClean: true,
      events: 5,
      versions: {
        program: MACHINE_VERSION,
        snapshot: MACHINE_VERSION,
        events: [{ version: MACHINE_VERSION, events: 5 }],
      },
      numbers: { compared: { code: 'logNumbersCompared' }, firstWrong: null },
      hashes: { compared: { code: 'logHashesCompared' }, broken: [] },
      snapshot: { kind: 'compared', compared: { code: 'snapshotCompared' }, differences: [], more: 0 },
    });
  });

  it('names the fields of a record that is not what the log leads to', async () => {
    const { isClean, snapshot, hashes } = await checkAfter(
      `update ticket set snapshot = jsonb_set(jsonb_set(snapshot, '{context,round}', '7'), '{context,notes}', '[]')
         where id = $1`,
    );
    expect({ isClean, broken: hashes.broken }).toEqual({ isClean: false, broken: [] });
    expect(snapshot).toMatchObject({
      differences: expect.arrayContaining([
        { pointer: '/context/round', stored: 7, replayed: 1 },
        { pointer: '/context/notes/0', replayed: expect.objectContaining({ text: 'Hums.' }) },
      ]),
    });
    expect(snapshot.kind === 'compared' && snapshot.differences).toHaveLength(2);
  });

  it('names a value that the log does not lead to at all', async () => {
    const { snapshot } = await checkAfter(
      `update ticket set snapshot = jsonb_set(snapshot, '{context,with~a/slash}', '"extra"') where id = $1`,
    );
    expect(snapshot).toMatchObject({
      differences: [{ pointer: '/context/with~0a~1slash', stored: 'extra' }],
    });
  });

  it('counts the differences that it does not name', async () => {
    const { snapshot } = await checkAfter(
      `update ticket set snapshot = jsonb_set(snapshot, '{context}', snapshot->'context' ||
         (select jsonb_object_agg('extra' || number, number) from generate_series(1, 140) as number)) where id = $1`,
    );
    expect(snapshot).toMatchObject({ more: 40 });
  });

  it('tells an event that is not as hashed from one that does not follow', async () => {
    const changed = await checkAfter(
      `update ticket_event set payload = payload || '{"aside": 1}' where ticket_id = $1 and sequence = 3`,
    );
    expect(changed.hashes.broken).toEqual([{ sequence: 3, because: 'content' }]);
    const rehashed = await checkAfter(
      `update ticket_event set hash = repeat('a', 64) where ticket_id = $1 and sequence = 3`,
    );
    expect(rehashed.hashes.broken).toEqual([
      { sequence: 3, because: 'content' },
      { sequence: 4, because: 'predecessor' },
    ]);
    expect([changed.isClean, rehashed.isClean]).toEqual([false, false]);
  });

  it.each([
    [
      'in the middle',
      'delete from ticket_event where ticket_id = $1 and sequence = 3',
      { expected: 3, found: 4 },
    ],
    [
      'at the end',
      'delete from ticket_event where ticket_id = $1 and sequence = 5',
      { expected: 5, found: null },
    ],
    [
      'that the ticket does not count',
      'update ticket set sequence = 4 where id = $1',
      { expected: null, found: 5 },
    ],
  ])('finds an event missing %s', async (_where, sql, firstWrong) => {
    const { isClean, numbers } = await checkAfter('delete from ticket_text where ticket_id = $1', sql);
    expect({ isClean, firstWrong: numbers.firstWrong }).toEqual({ isClean: false, firstWrong });
  });

  it('finds a text that is not the one hashed, and one that is gone without having been erased', async () => {
    const changed = await checkAfter(`update ticket_text set text = 'Never said.' where ticket_id = $1`);
    expect(changed.texts.wrong).toEqual([{ sequence: 5, pointer: '/text', because: 'content' }]);
    const gone = await checkAfter('delete from ticket_text where ticket_id = $1');
    expect(gone.texts.wrong).toEqual([{ sequence: 5, pointer: '/text', because: 'missing' }]);
    expect([changed.isClean, gone.isClean]).toEqual([false, false]);
    expect([changed.hashes.broken, gone.hashes.broken]).toEqual([[], []]);
  });

  it('says of a log that does not replay why', async () => {
    const { isClean, snapshot } = await checkAfter(
      `update ticket_event set type = 'beginSubstitution' where ticket_id = $1 and sequence = 2`,
    );
    expect(isClean).toBe(false);
    expect(snapshot).toMatchObject({
      kind: 'doesNotReplay',
      because: expect.stringContaining('beginSubstitution'),
    });
  });

  it('says of a snapshot out of use that nothing was left to compare', async () => {
    const { isClean, snapshot } = await checkAfter(`update ticket set snapshot = 'null' where id = $1`);
    expect(isClean).toBe(true);
    expect(snapshot).toMatchObject({ kind: 'notInUse', compared: { code: 'snapshotNotInUse' } });
  });
});
