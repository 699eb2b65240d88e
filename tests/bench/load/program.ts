import { type ChildProcess, execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import pg from 'pg';
import { freePort, startProgram, stopProgram } from '../../support/server-process.ts';

/** The program of one commit, built, on a database of its own on the PostgreSQL that TEST_DATABASE_URL names. */
export type Program = {
  readonly base: string;
  readonly databaseUrl: string;
  /** The first admin of an organisation that is there. */
  readonly admin: { readonly organisation: string; readonly email: string; readonly password: string };
  stop(): Promise<void>;
};

/** @param ref a commit; null for what stands here */
export async function startCommit(ref: string | null, serverUrl: string): Promise<Program> {
  const folder = ref === null ? process.cwd() : checkedOut(ref);
  const run = (...words: string[]) => execFileSync(process.execPath, words, { cwd: folder, stdio: 'pipe' });
  if (ref !== null) run('prisma/generate.js');
  run('src/cli/build.js', '--if-needed', 'server');
  const name = `halfsplit_load_${process.pid}_${ref === null ? 'here' : 'before'}`;
  await onServer(serverUrl, `create database ${name} template template0`);
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  const data = mkdtempSync(join(tmpdir(), 'halfsplit-load-data-'));
  const port = await freePort();
  const env = {
    ...process.env,
    DATABASE_URL: url.href,
    HALFSPLIT_DATA: data,
    HALFSPLIT_REQUESTS_PER_MIN: '10000000',
    HALFSPLIT_ORG_REQUESTS_PER_MIN: '10000000',
    LOG_LEVEL: 'error',
    PORT: String(port),
  };
  const admin = ['--admin-name', 'Admin', '--admin-email', 'admin@load.example'];
  const told = execFileSync(
    process.execPath,
    ['dist/server/create-organisation.js', '--handle', 'load', '--name', 'Load', ...admin],
    { cwd: folder, env, encoding: 'utf8' },
  );
  const password = /password:?\s+(\S+)/i.exec(told)?.[1] ?? '';
  const base = `http://127.0.0.1:${port}`;
  const process_: ChildProcess = await startProgram(join(folder, 'dist/server/main.js'), env, base);
  return {
    base,
    databaseUrl: url.href,
    admin: { organisation: 'load', email: 'admin@load.example', password },
    stop: async () => {
      await stopProgram(process_);
      await onServer(serverUrl, `drop database ${name} with (force)`);
      rmSync(data, { recursive: true, force: true });
      if (ref !== null) execFileSync('git', ['worktree', 'remove', '--force', folder], { stdio: 'pipe' });
    },
  };
}

function checkedOut(ref: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'halfsplit-load-'));
  execFileSync('git', ['worktree', 'add', '--detach', folder, ref], { stdio: 'pipe' });
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'));
  return folder;
}

async function onServer(serverUrl: string, statement: string): Promise<void> {
  const client = new pg.Client(serverUrl);
  await client.connect();
  await client.query(statement);
  await client.end();
}
