import { createHash } from 'node:crypto';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { migrate } from '../../src/database/migrate.ts';
import { databaseKinds, openEmptyDatabase } from '../support/test-database.ts';
import {
  type FrozenBlob,
  frozenRows,
  frozenStore,
  readFrozenDatabase,
  readFrozenEvidence,
  readFrozenLogs,
  readFrozenPacket,
  readFrozenPhone,
} from './frozen-1.ts';
import { fillAsVersion1 } from './frozen-1-app.ts';

const database = readFrozenDatabase();
const phone = readFrozenPhone();
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

describe.each(databaseKinds())('the databases of version 1 (%s)', (kind) => {
  it.each(['database', 'database-planted'] as const)(
    'can be filled in again and brought up to date: %s',
    async (name) => {
      const frozen = readFrozenDatabase(name);
      const { connections, drop } = await openEmptyDatabase(kind);
      const client = await connections.pool.connect();
      try {
        await fillAsVersion1(client, frozen);
        const { rows } = await client.query(`select id::text, snapshot from ticket order by org_id, number`);
        const stored = frozenRows(frozen, 'ticket').sort((a, b) => Number(a.number) - Number(b.number));
        expect(rows).toEqual(stored.map(({ id, snapshot }) => ({ id, snapshot })));
        await migrate(client);
      } finally {
        client.release();
        await drop();
      }
    },
  );
});

describe('what belongs to a database of version 1', () => {
  it('is the logs that were read out of it, event by event', () => {
    for (const [name, files] of [
      ['database', ['demo-case', 'server-tickets']],
      ['database-planted', ['demo-tickets']],
    ] as const) {
      const frozen = readFrozenDatabase(name);
      const logged = files.flatMap(readFrozenLogs);
      const hashes = logged.flatMap(({ events }) => events.map(({ hash }) => hash));
      expect(hashes.sort()).toEqual(
        frozenRows(frozen, 'ticket_event')
          .map(({ hash }) => hash)
          .sort(),
      );
      for (const { id, snapshot } of frozenRows(frozen, 'ticket')) {
        const log = logged.find(({ opening }) => opening.ticketId === id);
        expect(log?.snapshots.at(-1)).toEqual(snapshot);
      }
    }
  });

  it('is an evidence store with every file that evidence and packets name', () => {
    const kept = new Map(readFrozenEvidence().map((file) => [file.sha256, file]));
    for (const { bytes, sha256: name } of kept.values()) expect(sha256(bytes)).toBe(name);
    const packets = frozenRows(database, 'packet').flatMap(({ files }) => files as { sha256: string }[]);
    const named = [...packets, ...(frozenRows(database, 'stored_file') as { sha256: string }[])];
    expect(named.filter((file) => !kept.has(file.sha256))).toEqual([]);
    expect(packets.length).toBeGreaterThan(40);
  });

  it('is a packet whose manifest holds', () => {
    const files = unzipSync(new Uint8Array(readFrozenPacket()));
    const [folder = ''] = Object.keys(files)[0]?.split('/') ?? [];
    const manifest = strFromU8(files[`${folder}/manifest-sha256.txt`] ?? new Uint8Array());
    const lines = manifest.trim().split('\n');
    expect(lines.length).toBeGreaterThan(10);
    for (const line of lines) {
      const [hash, path] = line.split('  ');
      expect(sha256(files[`${folder}/${path}`] ?? new Uint8Array()), path).toBe(hash);
    }
  });

  it('has rows of every kind that a later version has to read', () => {
    const count = (table: string) => frozenRows(database, table).length;
    for (const { name } of database.tables) expect(count(name), name).toBeGreaterThan(0);
    const news = frozenRows(database, 'packet').flatMap((row) => row.news as string[]);
    const changes = frozenRows(database, 'chain_version').flatMap((row) => row.changes as string[]);
    expect([news.length > 0, changes.length > 10]).toEqual([true, true]);
    const statuses = new Set(frozenRows(database, 'idempotency_record').map(({ status }) => status));
    expect(statuses).toEqual(new Set(['200', '201', '409']));
  });
});

type Entry = { kind: string; state: string; ticketId: string; command?: { type: string }; id: string };

describe('the phone of version 1', () => {
  const outbox = frozenStore(phone, 'outbox').map(({ value }) => value as Entry);

  it('has an entry of every kind and state, in order', () => {
    expect(new Set(outbox.map(({ kind }) => kind))).toEqual(new Set(['command', 'reading', 'upload']));
    expect(new Set(outbox.map(({ state }) => state))).toEqual(
      new Set(['waiting', 'sending', 'refused', 'conflict']),
    );
    expect(outbox.map(({ ticketId }) => ticketId).filter((id) => id === phone.tickets.visit)).toHaveLength(
      phone.projected.ahead,
    );
    expect(frozenStore(phone, 'outbox').map(({ key }) => key)).toEqual(outbox.map((_, at) => at + 1));
  });

  it('has a file for every upload, and documents with address, tag and body', () => {
    const files = frozenStore(phone, 'files') as readonly { key: string; value: FrozenBlob }[];
    const uploads = outbox.filter(({ kind }) => kind === 'upload').map(({ id }) => id);
    expect(files.map(({ key }) => key).sort()).toEqual(uploads.sort());
    for (const { value } of files) expect(value.blob.base64.length).toBeGreaterThan(0);
    const documents = frozenStore(phone, 'documents');
    expect(documents.length).toBeGreaterThan(40);
    for (const { key, value } of documents) {
      expect(value).toMatchObject({ path: key, etag: expect.any(String), body: expect.anything() });
    }
    expect(frozenStore(phone, 'drafts').length).toBeGreaterThan(0);
  });

  it('belongs to the database: the tickets it read are there, and so is the reply it never got', () => {
    const read = new Map(frozenStore(phone, 'documents').map(({ key, value }) => [key, value]));
    const visit = read.get(`/tickets/${phone.tickets.visit}`) as { body: { triage: object } };
    const row = frozenRows(database, 'ticket').find(({ id }) => id === phone.tickets.visit);
    expect(row?.snapshot).toMatchObject({ context: visit.body.triage });
    const sending = outbox.find(({ state }) => state === 'sending');
    const kept = frozenRows(database, 'idempotency_record').find(({ key }) => key === sending?.id);
    expect(kept).toMatchObject({ status: '200' });
  });

  it('loses nothing on its way to the server of version 1', () => {
    const [visit, arrived] = phone.afterSending as [
      { state: string; sequence: number },
      { sequence: number },
    ];
    const sequenceOf = (ticketId: string) =>
      Number(frozenRows(database, 'ticket').find(({ id }) => id === ticketId)?.sequence);
    expect(visit.state).toBe(phone.projected.state);
    expect(visit.sequence).toBe(sequenceOf(phone.tickets.visit) + phone.projected.ahead);
    // Of its two entries the first had arrived before.
    expect(arrived.sequence).toBe(sequenceOf(phone.tickets.arrived) + 1);
  });
});
