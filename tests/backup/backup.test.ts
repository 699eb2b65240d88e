import { execFile } from 'node:child_process';
import { appendFile, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { PGlite } from '@electric-sql/pglite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { backUp, restore } from '../../src/backup/index.ts';
import {
  type Database,
  type DatabasePlace,
  NotRestorableError,
  openDatabase,
} from '../../src/database/index.ts';
import { openEvidenceStore } from '../../src/evidence-store/index.ts';
import { writeAnchors } from '../../src/features/ticket-record/index.ts';
import { postForm } from '../features/evidence/form-client.ts';
import { waiveAll } from '../state-machines/triage/triage-events.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import {
  type DatabaseKind,
  databaseKinds,
  migratedDataFolder,
  openEmptyDatabase,
} from '../support/test-database.ts';
import { accepted, openTestTicket } from '../support/tickets.ts';

/** A database is set up, filled and read whole, by three programs; on a busy machine that takes its time. */
const minutes = (count: number): number => count * 60_000;

/** Every row of every table, as a backup sees them. */
const allRows = (database: Database): Promise<Record<string, string[]>> =>
  database.readTables(async ({ tables }) => {
    const found: Record<string, string[]> = {};
    for (const { name, rows } of tables) {
      const texts: string[] = [];
      for await (const row of rows()) texts.push(row);
      found[name] = texts.sort();
    }
    return found;
  });

describe.each(databaseKinds())('a backup of the %s database', (kind) => {
  let test: TestApp;
  let folder: string;
  let backup: string;
  const log = 'a line of a log\n';
  const secret = 'a-secret-that-lies-in-the-data-folder';
  const scratch = async (): Promise<string> => mkdtemp(join(folder, 'scratch-'));
  const make = (to: string) => backUp(test.services, { to, secrets: true });
  /** A place that nobody has anything in yet; what was restored into it is dropped with it. */
  const emptyPlace = async (of: DatabaseKind): Promise<DatabasePlace & { drop(): Promise<void> }> => {
    const dataFolder = await scratch();
    if (of === 'embedded') {
      const loadDataDir = await migratedDataFolder();
      await (await PGlite.create(join(dataFolder, 'postgres'), { loadDataDir })).close();
      return { dataFolder, drop: async () => undefined };
    }
    const { databaseUrl, drop } = await openEmptyDatabase('server');
    return { dataFolder, databaseUrl, drop };
  };

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'halfsplit-backup-'));
    test = await openTestApp(kind);
    const { ticketId } = await openTestTicket(test);
    await accepted(test.home.technician, ticketId, { type: 'note', text: 'It hums at 50 Hz: "brr\\n" Ω.' });
    const about = { about: { kind: 'log' }, file: Buffer.from(log), name: 'box.log' };
    expect((await postForm(test, test.home.technician, ticketId, about)).status).toBe(201);
    const escalate = { type: 'escalate', question: 'Is it the lamp?', waivers: waiveAll };
    await accepted(test.home.technician, ticketId, escalate);
    await writeAnchors(test.services);
    await writeFile(join(test.services.config.dataFolder, 'token-secret'), `${secret}\n`);
    const made = await make(join(folder, 'backups'));
    expect(made.lacking).toEqual([]);
    expect(made.files).toBeGreaterThan(5);
    backup = made.folder;
  });
  afterAll(async () => {
    await test.close();
    await rm(folder, { recursive: true, force: true });
  });

  it.each(databaseKinds())(
    'brings all of it back into an empty %s database, and verifies',
    async (into) => {
      const place = await emptyPlace(into);
      try {
        const { rows, lacking } = await restore(backup, place);
        expect(lacking).toEqual([]);
        expect(rows).toBeGreaterThan(20);
        const restored = await openDatabase(place);
        const found = await allRows(restored);
        await restored.close();
        expect(found).toEqual(await allRows(test.services.database));
        expect(found.ticket_event?.length).toBeGreaterThan(2);
        expect(await readFile(join(place.dataFolder, 'token-secret'), 'utf8')).toBe(`${secret}\n`);
        const { signingKey } = test.services.config;
        const verify = promisify(execFile)(process.execPath, ['--import', 'tsx', 'src/cli/verify.ts'], {
          env: {
            ...process.env,
            HALFSPLIT_DATA: place.dataFolder,
            HALFSPLIT_SIGNING_KEY: String(signingKey.export({ type: 'pkcs8', format: 'pem' })),
            ...(place.databaseUrl === undefined ? {} : { DATABASE_URL: place.databaseUrl }),
          },
        });
        expect((await verify).stdout).toContain('home-firm: 1 tickets, 1 files, 1 packets, 1 anchors');
      } finally {
        await place.drop();
      }
    },
    minutes(3),
  );

  it('lets requests write again to what was restored, and walls tenants off', async () => {
    const place = await emptyPlace(kind);
    await restore(backup, place);
    const restored = await openDatabase(place);
    try {
      const { orgId } = test.other;
      const home = { orgId: test.home.orgId, memberId: test.home.technician.id };
      const seen = await restored.inTenant(home, (tx) => tx.site.findMany({ select: { orgId: true } }));
      expect(new Set(seen.map((site) => site.orgId))).toEqual(new Set([test.home.orgId]));
      const stolen = restored.inTenant(home, (tx) =>
        tx.firmwareLevel.create({ data: { orgId, id: orgId, model: 'P', minimum: '1' } }),
      );
      await expect(stolen).rejects.toThrow();
      const told: string[] = [];
      const stop = await restored.listen('halfsplit_news', {
        heard: (text) => told.push(text),
        missed: () => undefined,
      });
      await restored.inTenant(home, (tx) =>
        tx.firmwareLevel.create({ data: { orgId: home.orgId, id: orgId, model: 'P', minimum: '1' } }),
      );
      await expect.poll(() => told.length).toBe(1);
      await stop();
    } finally {
      await restored.close();
      await place.drop();
    }
  });

  it('shows one moment: what is written while it is made is in the next', async () => {
    const { database } = test.services;
    if (database.kind === 'embedded') return expect(kind).toBe('embedded');
    const notes = await database.readTables(async ({ tables }) => {
      const { ticketId } = await openTestTicket(test);
      await accepted(test.home.technician, ticketId, { type: 'note', text: 'written meanwhile' });
      const table = tables.find(({ name }) => name === 'ticket_text');
      const texts: string[] = [];
      for await (const row of table?.rows() ?? []) texts.push(row);
      return texts.filter((text) => text.includes('written meanwhile'));
    });
    expect(notes).toEqual([]);
    expect(JSON.stringify(await allRows(database))).toContain('written meanwhile');
  });

  it('shares the evidence with the backups beside it', async () => {
    test.setNow(new Date('2031-01-01T00:00:00Z'));
    const evidence = join(folder, 'backups', 'evidence');
    const before = await readdir(evidence, { recursive: true });
    const next = await make(join(folder, 'backups'));
    test.setNow(null);
    expect((await readdir(evidence, { recursive: true })).toSorted()).toEqual(before.toSorted());
    const list = (made: string) => readFile(join(made, 'evidence.sha256'), 'utf8');
    expect(await list(next.folder)).toBe(await list(backup));
  });

  it('fails, and leaves no folder behind, where a table can not be read', async () => {
    const to = await scratch();
    const failing: Database = {
      ...test.services.database,
      readTables: (work) =>
        test.services.database.readTables(({ migrations, tables }) =>
          work({
            migrations,
            tables: tables.map((table) => ({
              name: table.name,
              rows: async function* () {
                yield* table.rows();
                if (table.name === 'ticket') throw new Error('the disk of the database broke');
              },
            })),
          }),
        ),
    };
    const made = backUp({ ...test.services, database: failing }, { to, secrets: true });
    await expect(made).rejects.toThrow('the disk of the database broke');
    expect(await readdir(to)).toEqual([]);
  });

  it('leaves out the secrets where it is told to', async () => {
    const { folder: made } = await backUp(test.services, { to: await scratch(), secrets: false });
    expect(await readdir(join(made, 'data'))).toEqual(['anchors']);
  });

  describe('is refused, and nothing restored,', () => {
    /** A copy of the backup's folder of its own, with something done to it. */
    const refusal = async (harm: (made: string) => Promise<unknown>, place?: DatabasePlace) => {
      const { folder: made } = await make(await scratch());
      await harm(made);
      const into = place ?? { dataFolder: await scratch() };
      await expect(restore(made, into)).rejects.toThrow(NotRestorableError);
      if (place === undefined) expect(await readdir(into.dataFolder)).toEqual([]);
    };

    it('where it was not finished', () => refusal((made) => rm(join(made, 'contents.sha256'))));
    it('where a table lacks its file', () => refusal((made) => rm(join(made, 'tables/ticket.ndjson.gz'))));
    it('where a byte more is in one', () =>
      refusal((made) => appendFile(join(made, 'tables/ticket.ndjson.gz'), '.')));

    it('where somebody has something in the database', async () => {
      const place = await emptyPlace(kind);
      await restore(backup, place);
      await refusal(async () => undefined, place);
      await place.drop();
    });
  });

  it('names a file of the evidence that is not what was kept, and brings back the rest', async () => {
    const store = await openEvidenceStore({ folder: join(test.services.config.dataFolder, 'evidence') });
    const contents = [];
    for await (const content of store.contents()) contents.push(content);
    const [first] = contents;
    if (first === undefined) throw new Error('no evidence');
    const path = join(first.orgId, first.sha256.slice(0, 2), first.sha256);
    const kept = join(test.services.config.dataFolder, 'evidence', path);
    const whole = await readFile(kept);
    await writeFile(kept, 'other bytes');
    const made = await make(await scratch());
    await writeFile(kept, whole);
    expect(made.lacking).toEqual([{ ...first, is: 'damaged' }]);
    expect(made.files).toBe(contents.length - 1);

    const elsewhere = await scratch();
    const good = await make(elsewhere);
    await rename(join(elsewhere, 'evidence', path), join(elsewhere, 'lost'));
    const restored = await restore(good.folder, await emptyPlace('embedded'));
    expect(restored.lacking).toEqual([{ ...first, is: 'missing' }]);
    expect(restored.files).toBe(contents.length - 1);
  });
});
