import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type TableUse, tablesIn, tableUses } from '../support/table-use.ts';

/** The one folder that writes a table, parses its JSON, and says what a row of it means. */
const owners: Readonly<Record<string, string>> = {
  organisation: 'src/features/organisation/',
  firmwareLevel: 'src/features/organisation/',
  member: 'src/features/people/',
  session: 'src/features/people/',
  authenticatorApp: 'src/features/people/',
  recoveryCode: 'src/features/people/',
  secondStep: 'src/features/people/',
  signInTry: 'src/features/people/',
  refreshToken: 'src/features/people/',
  idempotencyRecord: 'src/http/',
  auditEntry: 'src/http/',
  site: 'src/features/sites/',
  chain: 'src/features/chains/',
  chainVersion: 'src/features/chains/',
  ticket: 'src/features/ticket-record/',
  ticketEvent: 'src/features/ticket-record/',
  ticketText: 'src/features/ticket-record/',
  change: 'src/features/ticket-record/',
  storedFile: 'src/features/evidence-record/',
  evidence: 'src/features/evidence-record/',
  packet: 'src/features/packets/',
  packetGrant: 'src/features/packets/',
  diary: 'src/features/diary/',
};

const tables = tablesIn(readFileSync('prisma/schema.prisma', 'utf8'));

/** Why a use is not its table's owner's; null where it may stand. */
function objectionTo({ file, table, how }: TableUse): string | null {
  const isOwners = file.startsWith(owners[table] ?? 'nowhere');
  if (how === 'written' || how === 'parsed') return isOwners ? null : `${table} is ${how} by its owner only`;
  if (isOwners || file.endsWith('.read.ts')) return null;
  return `${table} is ${how} outside its owner's folder in files named *.read.ts only`;
}

const objections = (files: ReadonlyMap<string, string>): string[] =>
  tableUses(files, tables).flatMap((use) => {
    const objection = objectionTo(use);
    return objection === null ? [] : [`${use.file}:${use.line}: ${objection}`];
  });

function serverFiles(): Map<string, string> {
  const folders = ['src', 'seed'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((file) => `${folder}/${file}`),
  );
  const files = folders.filter(
    (file) => file.endsWith('.ts') && !/^src\/(web|database\/generated)\//.test(file),
  );
  return new Map(files.map((file) => [file, readFileSync(file, 'utf8')]));
}

describe('a table', () => {
  it('has an owner', () => {
    expect(Object.keys(owners).toSorted()).toEqual([...tables.keys()].toSorted());
  });

  it('is written and parsed by its owner, and read elsewhere in *.read.ts only', () => {
    expect(objections(serverFiles())).toEqual([]);
  });

  it('is found in use at all', () => {
    const written = tableUses(serverFiles(), tables).filter(({ how }) => how === 'written');
    expect(new Set(written.map(({ table }) => table))).toEqual(new Set(tables.keys()));
  });
});

describe('an objection is raised to', () => {
  const stranger = 'src/features/elsewhere/use-case.ts';
  const query = 'src/features/elsewhere/use-case.read.ts';
  const inFile = (file: string, text: string): string[] => objections(new Map([[file, text]]));

  it.each([
    ['a write', 'await tx.ticket.update({ where, data: { state } });'],
    ['a write in a file for reading', 'await tx.ticket.createMany({ data });', query],
    ['a write in SQL', 'await tx.$executeRaw`update member set failed_sign_ins = 0 where version = 7`;'],
    [
      'a write in SQL over lines, quoted',
      'await tx.$executeRaw`\n  delete from\n  "packet_grant" where version = 7`;',
    ],
    ['an insert in SQL as text', "pool.query('insert into public.site (id) values ($1)', [id]);"],
    ['a write in SQL to the table alone', 'await tx.$executeRaw`update only ticket set state = 1`;', query],
    ['a merge', 'await tx.$executeRaw`merge into ticket using x on true when matched then delete`;', query],
    ['a lock', 'await tx.$executeRawUnsafe(`lock table ticket in exclusive mode`);', query],
    ['a write in SQL after a comment', "pool.query('-- why\\nupdate ticket set state = 1');", query],
    ['a write in SQL as an object', "pool.query({ text: 'delete from ticket' });", query],
    ['SQL that is put together', "await tx.$executeRawUnsafe('update ' + 'ticket set state = 1');"],
    ['a part of a query in SQL', 'const joined = Prisma.sql`join ticket on true`;'],
    ['a second table in SQL', 'await tx.$queryRaw`select 1 from note n, ticket t where n.id = t.id`;'],
    ['a name with its schema', 'await tx.$queryRaw`select 1 from public . "ticket"`;'],
    ['a table by its name as text', "await tx['ticket'].update({ where });", query],
    [
      'a table taken out of the transaction',
      'const { ticket } = context.tx; ticket.update({ where });',
      query,
    ],
    ['a nested write', 'await own.evidence.create({ data: { ticket: { create: {} } } });'],
    ['a table handed on', 'const table = tx.ticket;'],
    ['a read', 'await tx.member.findUnique({ where });'],
    ['a read in SQL', 'await tx.$queryRaw`select id from chain where version = 7 for update`;'],
    ['a cast of its JSON', 'const row = await tx.ticket.findFirst({}); use(row.snapshot as unknown);', query],
    [
      'a parse of its JSON',
      'const { caseFile } = await tx.packet.findFirst({}); form.parse(caseFile);',
      query,
    ],
    [
      'a parse of its JSON by another name',
      'const { snapshot: kept } = await tx.ticket.findFirst({}); form.parse(kept ?? {});',
      query,
    ],
    [
      'a parse of its JSON by way of text',
      'const row = await tx.ticket.findFirst({}); form.parse(JSON.parse(JSON.stringify(row.snapshot)));',
      query,
    ],
  ])('%s', (_what, text, file = stranger) => {
    expect(inFile(file, text)).not.toEqual([]);
  });

  it('a join out of an owner’s folder, however the query is put together', () => {
    const owner = 'src/features/packets/';
    const joined = 'export const withName = { member: { select: { name: true } } } as const;';
    const ask = 'tx.packet.findMany({ where, include: withName });';
    expect(inFile(`${owner}a.ts`, `${joined}\n${ask}`)).toHaveLength(1);
    expect(inFile(`${owner}a.read.ts`, `${joined}\n${ask}`)).toEqual([]);
    const files = {
      'a.ts': `import { withName as it } from './index.ts';\n${ask.replace('withName', 'it')}`,
    };
    const door = { 'index.ts': "export { withName } from './b.ts';", 'b.ts': joined };
    const all = Object.entries({ ...files, ...door }).map(([name, text]) => [owner + name, text] as const);
    expect(objections(new Map(all))).toEqual([
      `${owner}a.ts:2: member is joined outside its owner's folder in files named *.read.ts only`,
    ]);
  });

  it('nothing that an owner does with a table of its own', () => {
    const text =
      'await tx.packet.create({ data }); await tx.$queryRaw`select id from packet`; row.files as string[];';
    expect(inFile('src/features/packets/a.ts', text)).toEqual([]);
  });
});
