import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { cp, lstat, mkdtemp, readdir, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { freePort, untilReady } from '../support/server-process.ts';

/** What is enough to run the server anywhere. */
const shipped = ['package.json', 'package-lock.json', 'dist', 'prisma'];
const largestModulesBytes = 250e6;

const project = fileURLToPath(new URL('../..', import.meta.url));
const execute = promisify(execFile);

/** Nothing of the test's own surroundings, so that the program finds its packages and files by itself. */
const surroundings = {
  PATH: process.env.PATH,
  HOME: process.env.HOME,
  HOST: '127.0.0.1',
  LOG_LEVEL: 'warn',
};

async function run(folder: string, command: string, words: string[]): Promise<string> {
  const { NODE_ENV: _ofTheTests, ...env } = process.env;
  const { stdout, stderr } = await execute(command, words, { cwd: folder, env, maxBuffer: 64 * 1024 * 1024 });
  return stdout + stderr;
}

/** Ends a program with all that it started, as Ctrl-C does: npm starts the server by a shell, which passes no signal on. */
async function stopGroup({ pid }: ChildProcess): Promise<void> {
  if (pid === undefined) return;
  const signal = (name: NodeJS.Signals | 0): boolean => {
    try {
      return process.kill(-pid, name);
    } catch {
      return false;
    }
  };
  signal('SIGTERM');
  for (let attempt = 0; signal(0); attempt += 1) {
    if (attempt === 300) signal('SIGKILL');
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

/** What the files of a folder take on the disk. */
async function bytesOf(folder: string): Promise<number> {
  const entries = await readdir(folder, { recursive: true });
  const sizes = await Promise.all(
    entries.map(async (entry) => (await lstat(join(folder, entry))).blocks * 512),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}

describe('what ships, in a folder with nothing else', () => {
  let folder = '';
  let installed = '';
  const running: ChildProcess[] = [];

  beforeAll(async () => {
    await run(project, process.execPath, ['src/cli/build.js', '--if-needed']);
    folder = await mkdtemp(join(tmpdir(), 'halfsplit-ships-'));
    for (const name of shipped) await cp(join(project, name), join(folder, name), { recursive: true });
    installed = await run(folder, 'npm', ['ci', '--omit=dev']);
  }, 600_000);

  afterEach(async () => {
    for (const program of running.splice(0)) await stopGroup(program);
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  async function start(command: string, words: string[]): Promise<string> {
    const port = await freePort();
    const env = { ...surroundings, PORT: String(port), HALFSPLIT_DATA: join(folder, 'data') };
    const program = spawn(command, words, {
      cwd: folder,
      env,
      detached: true,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    running.push(program);
    const base = `http://127.0.0.1:${port}`;
    await untilReady(program, base);
    return base;
  }

  it('installs without a word of a Node that is too old, with the packages that build and without', async () => {
    expect(installed).toMatch(/added \d+ packages/);
    expect(installed).not.toContain('EBADENGINE');
    const withThoseThatBuild = await run(folder, 'npm', ['ci', '--dry-run', '--include=dev']);
    expect(withThoseThatBuild).toMatch(/add vite \d/);
    expect(withThoseThatBuild).not.toContain('EBADENGINE');
  });

  it('keeps its modules under 250 MB', async () => {
    const bytes = await bytesOf(join(folder, 'node_modules'));
    expect(bytes).toBeGreaterThan(50e6);
    expect(bytes).toBeLessThan(largestModulesBytes);
  });

  it('makes an organisation, and serves its admin and the client', async () => {
    const env = { ...surroundings, HALFSPLIT_DATA: join(folder, 'data') };
    const admin = ['--admin-name', 'Runa Stellick', '--admin-email', 'runa@lanternrow.example'];
    const { stdout } = await execute(
      process.execPath,
      ['dist/server/create-organisation.js', '--handle', 'lanternrow', '--name', 'Lanternrow', ...admin],
      { cwd: folder, env },
    );
    const password = stdout.match(/the password (\S+)/)?.[1];

    const base = await start(process.execPath, ['dist/server/main.js']);
    const signedIn = await fetch(`${base}/auth/sign-in`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ organisation: 'lanternrow', email: 'runa@lanternrow.example', password }),
    });
    expect(signedIn.status).toBe(200);

    const page = await fetch(base);
    expect(page.status).toBe(200);
    expect(page.headers.get('content-type')).toContain('text/html');
    const script = (await page.text()).match(/<script[^>]* src="(\/assets\/[^"]+\.js)"/)?.[1];
    const code = await fetch(`${base}${script}`);
    expect(code.status).toBe(200);
    expect(code.headers.get('content-type')).toContain('javascript');
    for (const address of ['/reference', '/reference/openapi/'])
      expect((await fetch(`${base}${address}`)).status, address).toBe(200);
  });

  it('starts by npm start, and finds nothing to build', async () => {
    const base = await start('npm', ['start']);
    expect((await fetch(base)).status).toBe(200);
  });

  it('migrates by a program of its own', async () => {
    const env = { ...surroundings, HALFSPLIT_DATA: join(folder, 'fresh') };
    const migrate = () => execute(process.execPath, ['dist/server/run-migrations.js'], { cwd: folder, env });
    const names = (await readdir(join(project, 'prisma/migrations'), { withFileTypes: true }))
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
    const first = (await migrate()).stdout;
    expect(names.filter((name) => !first.includes(name))).toEqual([]);
    const second = (await migrate()).stdout;
    expect(names.filter((name) => second.includes(name))).toEqual([]);
  });

  it('rebuilds tickets by a program of its own', async () => {
    const env = { ...surroundings, HALFSPLIT_DATA: join(folder, 'data') };
    const { stdout } = await execute(process.execPath, ['dist/server/rebuild-tickets.js'], {
      cwd: folder,
      env,
    });
    expect(stdout).toBe('0 as they were, 0 rebuilt, 0 not.\n');
  });
});

describe('a fresh checkout', () => {
  /** What is not in a checkout, or has no say in what is built. */
  const left = ['node_modules', 'dist', '.git', '.halfsplit', 'out', 'screenshots', 'tests'];
  let folder = '';
  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('is built by the script that everything starts with, and left alone the second time', async () => {
    folder = await mkdtemp(join(tmpdir(), 'halfsplit-checkout-'));
    for (const name of (await readdir(project)).filter((each) => !left.includes(each)))
      await cp(join(project, name), join(folder, name), { recursive: true });
    await symlink(join(project, 'node_modules'), join(folder, 'node_modules'));
    const build = () => run(folder, 'npm', ['run', '-s', 'build:if-needed']);
    expect(await build()).toMatch(/Building the client .*Building the server/s);
    expect(await readdir(join(folder, 'dist/client'))).toContain('index.html');
    expect(await readdir(join(folder, 'dist/server'))).toContain('main.js');
    expect(await build()).toBe('');
  });
});
