import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import type { Server } from 'node:https';
import type { Logger } from 'pino';
import type { TlsFiles } from '../config.ts';
import { WrongSettingError } from '../wrong-setting.ts';

export type TlsPair = { readonly cert: string; readonly key: string };

/** @throws WrongSettingError where a file can't be read, is no such thing, or the two don't belong together */
export function readTlsPair({ certificate, key }: TlsFiles): TlsPair {
  const cert = read('HALFSPLIT_TLS_CERT', certificate);
  const pem = read('HALFSPLIT_TLS_KEY', key);
  const first = parsed('HALFSPLIT_TLS_CERT', 'holds no certificate in PEM', () => new X509Certificate(cert));
  const secret = parsed('HALFSPLIT_TLS_KEY', 'holds no private key in PEM', () => createPrivateKey(pem));
  if (!first.checkPrivateKey(secret))
    throw new WrongSettingError('HALFSPLIT_TLS_KEY', `is not the key of the certificate in ${certificate}`);
  return { cert, key: pem };
}

function read(setting: string, path: string): string {
  return parsed(setting, `${path} can't be read`, () => readFileSync(path, 'utf8'));
}

function parsed<T>(setting: string, why: string, work: () => T): T {
  try {
    return work();
  } catch (cause) {
    throw new WrongSettingError(setting, why, { cause });
  }
}

/** Assumed: a new certificate is in use long before the old one ends, and a look costs next to nothing. */
const lookEveryMs = 30_000;

/**
 * Takes a renewed certificate for the connections that come after, without a restart. A pair that doesn't fit (half of it
 * written) is told in the log, and looked at again; the one before stays in use.
 */
export function followTlsFiles(
  server: Server,
  files: TlsFiles,
  {
    logger,
    everyMs = lookEveryMs,
  }: { readonly logger: Pick<Logger, 'info' | 'error'>; readonly everyMs?: number | undefined },
): { stop(): void } {
  let inUse = stamp(files);
  const timer = setInterval(() => {
    const found = stamp(files);
    if (found === inUse) return;
    try {
      server.setSecureContext(readTlsPair(files));
      inUse = found;
      logger.info('a renewed certificate is in use');
    } catch (error) {
      logger.error({ err: error }, 'the certificate was not renewed');
    }
  }, everyMs);
  timer.unref();
  return { stop: () => clearInterval(timer) };
}

const stamp = ({ certificate, key }: TlsFiles): string =>
  [certificate, key]
    .map((path) => statSync(path, { throwIfNoEntry: false }))
    .map((found) => (found === undefined ? 'none' : `${found.ino} ${found.mtimeMs} ${found.size}`))
    .join();
