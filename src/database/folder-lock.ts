import { randomUUID } from 'node:crypto';
import {
  readFileSync,
  readlinkSync,
  renameSync,
  statSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { setTimeout } from 'node:timers/promises';

/** Another process has the embedded database's folder open; two at once would destroy it. */
export class FolderInUseError extends Error {
  override readonly name = 'FolderInUseError';
}

type Holder = { pid: number; machine: string; token: string };

/** Assumed: how often a holder touches its lock, and how long one is watched that can't be asked otherwise. */
const beatMs = 1_000;
const watchMs = 5_000;
/** Assumed: far longer than the moment between finding no holder alive and writing one's own name. */
const settleMs = 150;

/**
 * Takes the lock file at `path` for this process. A lock left by a process that was killed is taken over at once where
 * the process ids of this machine tell, or else (another container on the same folder) when its holder has not touched
 * it for 5 s.
 * @returns a function that gives the lock back.
 * @throws FolderInUseError
 */
export async function lockFolder(path: string): Promise<() => Promise<void>> {
  const mine: Holder = { pid: process.pid, machine: thisMachine(), token: randomUUID() };
  const content = `${JSON.stringify(mine)}\n`;
  if (!created(path, content)) await takeOver(path, mine, content);
  // Of several that found no holder alive, the last to write stays; the others see that here and withdraw.
  await setTimeout(settleMs);
  const holder = readHolder(path);
  if (holder?.token !== mine.token) throw inUse(path, holder);
  const beat = setInterval(() => touch(path), beatMs);
  beat.unref();
  return async () => {
    clearInterval(beat);
    if (readHolder(path)?.token === mine.token) unlinkSync(path);
  };
}

const inUse = (path: string, holder: Holder | null): FolderInUseError =>
  new FolderInUseError(
    `The embedded database is open in another process (${holder === null ? 'it has just started' : `process ${holder.pid}`}). ` +
      `Stop that one, choose another HALFSPLIT_DATA, or use a server (DATABASE_URL). If it surely doesn't run, delete ${path}.`,
  );

function created(path: string, content: string): boolean {
  try {
    writeFileSync(path, content, { flag: 'wx', mode: 0o600 });
    return true;
  } catch (error) {
    if (hasCode(error, 'EEXIST')) return false;
    throw error;
  }
}

/** Null where the file is gone, or was left empty by a crash. */
function readHolder(path: string): Holder | null {
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as Holder;
  } catch {
    return null;
  }
}

async function takeOver(path: string, mine: Holder, content: string): Promise<void> {
  const found = readHolder(path);
  if (found !== null && (await isAlive(found, path))) throw inUse(path, found);
  const draft = `${path}.${mine.token}`;
  writeFileSync(draft, content, { mode: 0o600 });
  const now = readHolder(path);
  if (now?.token === found?.token) return renameSync(draft, path);
  unlinkSync(draft);
  throw inUse(path, now);
}

async function isAlive(holder: Holder, path: string): Promise<boolean> {
  if (holder.machine === thisMachine()) return processExists(holder.pid);
  const before = lastTouched(path);
  await setTimeout(watchMs);
  return lastTouched(path) !== before;
}

/** Process ids mean something within one boot and one process namespace only; Linux tells both. */
function thisMachine(): string {
  const read = (from: () => string): string => {
    try {
      return from().trim();
    } catch {
      return '';
    }
  };
  const boot = read(() => readFileSync('/proc/sys/kernel/random/boot_id', 'utf8'));
  return [hostname(), boot, read(() => readlinkSync('/proc/self/ns/pid'))].join(' ');
}

function processExists(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return !hasCode(error, 'ESRCH');
  }
}

function lastTouched(path: string): number | null {
  try {
    return statSync(path).mtimeMs;
  } catch {
    return null;
  }
}

function touch(path: string): void {
  try {
    utimesSync(path, new Date(), new Date());
  } catch {
    // The folder was removed under a running program; its next query says so.
  }
}

const hasCode = (error: unknown, code: string): boolean =>
  error instanceof Error && 'code' in error && error.code === code;
