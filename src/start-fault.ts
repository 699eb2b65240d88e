import { inspect } from 'node:util';
import { FolderInUseError, MigrationError, NotRestorableError } from './database/index.ts';
import { WrongSettingError } from './wrong-setting.ts';

type SystemError = Error & {
  readonly code: string;
  readonly syscall?: string;
  readonly path?: string;
  readonly address?: string;
  readonly hostname?: string;
  readonly port?: number;
};

/** Starts a program; where that fails, ends the process and says why. */
export async function startedOrTold<Started>(start: () => Promise<Started>): Promise<Started> {
  try {
    return await start();
  } catch (error) {
    process.stderr.write(`${startFault(error)}\n`);
    return process.exit(1);
  }
}

/** What a person at the command line is told when a program did not start: a line, where the cause is one they can mend. */
export function startFault(error: unknown): string {
  if (
    error instanceof WrongSettingError ||
    error instanceof FolderInUseError ||
    error instanceof MigrationError ||
    error instanceof NotRestorableError
  )
    return error.message;
  if (!isSystemError(error)) return inspect(error);
  return listenFault(error) ?? folderFault(error) ?? inspect(error);
}

/** Why nobody can listen where it was asked for. What connects to a database tells its faults as wrong settings. */
function listenFault({ code, syscall, address, hostname, port }: SystemError): string | null {
  if (syscall === 'getaddrinfo') return `HOST: no address is known for ${hostname}`;
  if (syscall !== 'listen') return null;
  if (code === 'EADDRINUSE') return `PORT: another program listens on port ${port} of ${address} already`;
  if (code === 'EACCES') return `PORT: this user may not listen on port ${port}`;
  return code === 'EADDRNOTAVAIL' ? `HOST: this machine has no address ${address}` : null;
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there',
  EROFS: 'nothing can be written there',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'a part of the path is no folder',
  EEXIST: 'it is no folder',
};

function folderFault({ code, path }: SystemError): string | null {
  const reason = reasons[code];
  return reason === undefined || path === undefined ? null : `HALFSPLIT_DATA: ${path}: ${reason}`;
}

const isSystemError = (error: unknown): error is SystemError =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' && 'syscall' in error;
