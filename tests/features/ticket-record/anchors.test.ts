import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  anchorFiles,
  anchorFolder,
  checkAnchors,
  writeAnchors,
} from '../../../src/features/ticket-record/index.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, openTestTicket } from '../../support/tickets.ts';
import { getBytes } from '../evidence/form-client.ts';

const dayMs = 86_400_000;

describe.each(databaseKinds())('anchors of logs, on the %s database', (kind) => {
  let test: TestApp;
  let folder: string;
  const tickets: string[] = [];
  beforeAll(async () => {
    test = await openTestApp(kind);
    folder = anchorFolder(test.services.config.dataFolder);
    for (let count = 0; count < 3; count += 1) tickets.push((await openTestTicket(test)).ticketId);
  });
  afterAll(() => test.close());

  const note = (ticket: number) =>
    accepted(test.home.technician, tickets[ticket] ?? '', { type: 'note', text: 'It hums.' });
  const faults = async () => {
    const { orgId } = test.home;
    const { database, config } = test.services;
    const tenant = { orgId, memberId: null };
    const checked = await checkAnchors(
      (work) => database.inTenant(tenant, (tx) => work({ tx, actor: { orgId } })),
      orgId,
      { folder, key: config.signingKey },
    );
    return checked.faults;
  };
  const files = () => anchorFiles(folder, test.home.orgId);
  const headsIn = async (path: string) => (await readFile(path, 'utf8')).trimEnd().split('\n').slice(2, -1);

  it('are made once a day, each of the logs that went on, and name nothing wrong in them', async () => {
    await writeAnchors(test.services);
    await writeAnchors(test.services);
    expect(await files()).toHaveLength(1);
    expect(await headsIn((await files())[0]?.path ?? '')).toHaveLength(3);
    // Later than the hour for which events are named twice.
    test.setNow(new Date(Date.now() + dayMs));
    await note(1);
    await writeAnchors(test.services);
    const [, second] = await files();
    expect(await headsIn(second?.path ?? '')).toEqual([expect.stringContaining(`${tickets[1]} 2 `)]);
    expect(await faults()).toEqual([]);
  });

  it('are in the export, as they are kept', async () => {
    const { body } = await getBytes(test, test.home.admin, '/export', {});
    const inZip = Object.entries(unzipSync(body)).filter(([path]) => path.includes('/anchors/'));
    expect(inZip.map(([path]) => path.slice(path.indexOf('/') + 1))).toEqual(
      (await files()).map(({ day }) => `anchors/${test.home.orgId}/${day}.txt`),
    );
    const [first] = await files();
    expect(strFromU8(inZip[0]?.[1] ?? new Uint8Array())).toBe(await readFile(first?.path ?? '', 'utf8'));
  });

  it('name a log that was cut off and a ticket that is gone, whatever the database says of itself', async () => {
    const where = 'where ticket_id = $1 and sequence = 2';
    await test.tamper(`delete from ticket_text ${where}`, [tickets[1]]);
    await test.tamper(`delete from ticket_event ${where}`, [tickets[1]]);
    await test.tamper('update ticket set sequence = 1 where id = $1', [tickets[1]]);
    await test.tamper('update ticket_event set hash = $2 where ticket_id = $1', [tickets[2], 'f'.repeat(64)]);
    const [first, second] = await files();
    expect((await faults()).toSorted()).toEqual([
      `ticket no. 2: event 2 is missing, which the anchor of ${second?.day} names`,
      `ticket no. 3: event 1 is not the one that the anchor of ${first?.day} names`,
    ]);
  });

  it('are known to be changed, or left out', async () => {
    const [first, second] = await files();
    const path = join(folder, test.home.orgId, `${first?.day}.txt`);
    const whole = await readFile(path, 'utf8');
    await writeFile(path, whole.replace(/ 1 [0-9a-f]/, ' 2 0'));
    expect(await faults()).toEqual(
      expect.arrayContaining([
        `anchor of ${first?.day}: was not signed by this server's key`,
        `anchor of ${second?.day}: does not follow the one before it`,
      ]),
    );
    await writeFile(path, whole);
  });
});
