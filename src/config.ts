import { createPrivateKey, generateKeyPairSync, type KeyObject, randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join, resolve } from 'node:path';
import { z } from 'zod';
import type { QuotaName } from '../shared/contract/quota-names.ts';
import { programFolder } from './program-folder.ts';
import { WrongSettingError } from './wrong-setting.ts';

/** Where `npm run build` puts the client. */
export const builtClient = join(programFolder, 'dist/client');

/**
 * Whose word counts about a caller's address: nobody's, that of as many proxies as stand in front, or that of proxies at
 * these addresses or nets. Not "anybody's": the first address in X-Forwarded-For is whatever a stranger wrote there.
 */
const trustedProxies = z.string().transform((value, context): TrustedProxies => {
  const said = value.trim();
  if (said === 'false') return false;
  if (/^[1-9]$/.test(said)) return Number(said);
  const nets = said.split(',').map((net) => net.trim());
  if (nets.every(isNet)) return nets;
  context.addIssue({
    code: 'custom',
    message:
      'give how many proxies stand in front of the server (1), or their addresses or nets, with commas between',
  });
  return z.NEVER;
});

function isNet(text: string): boolean {
  const [address = '', bits, ...more] = text.split('/');
  const version = isIP(address);
  if (version === 0 || more.length > 0) return false;
  return (
    bits === undefined ||
    (/^\d{1,3}$/.test(bits) && Number(bits) >= 1 && Number(bits) <= (version === 4 ? 32 : 128))
  );
}

/** @throws where it is no private key for Ed25519 */
function readKey(pem: string): KeyObject {
  const key = createPrivateKey(pem);
  if (key.asymmetricKeyType !== 'ed25519') throw new TypeError('not a key for Ed25519');
  return key;
}

const signingKey = z.string().transform((pem, context): KeyObject => {
  try {
    return readKey(pem);
  } catch {
    context.addIssue({ code: 'custom', message: 'give a private key for Ed25519 in PEM (PKCS #8)' });
    return z.NEVER;
  }
});

const databaseUrl = z
  .string()
  .regex(/^postgres(ql)?:\/\//, 'give one like postgres://user@host:5432/database');

/** Fewest characters of a secret that tokens are signed with (RFC 7518, section 3.2: as many octets as SHA-256 gives). */
const leastSecret = 32;

/** Secrets that tokens are no longer signed with and were not long ago, with commas between. */
const oldSecrets = z
  .string()
  .transform((value) => value.split(',').map((secret) => secret.trim()))
  .pipe(z.array(z.string().min(leastSecret)));

/** An address of the machine and a port, as `127.0.0.1:9464`. */
const metricsPlace = z
  .string()
  .regex(/^.+:\d{1,5}$/, 'an address and a port, as 127.0.0.1:9464')
  .transform((value) => {
    const at = value.lastIndexOf(':');
    return { host: value.slice(0, at), port: Number(value.slice(at + 1)) };
  });

const environment = z.object({
  HALFSPLIT_DATA: z.string().min(1).default('.halfsplit'),
  DATABASE_URL: databaseUrl.optional(),
  HOST: z.string().default('127.0.0.1'),
  PORT: z.coerce.number().int().min(0).max(65_535).default(8080),
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent']).default('info'),
  HALFSPLIT_TOKEN_SECRET: z.string().min(leastSecret).optional(),
  HALFSPLIT_OLD_TOKEN_SECRETS: oldSecrets.optional(),
  HALFSPLIT_SIGNING_KEY: signingKey.optional(),
  HALFSPLIT_ACCESS_TOKEN_S: z.coerce.number().int().min(30).max(86_400).default(900),
  HALFSPLIT_REFRESH_TOKEN_DAYS: z.coerce.number().int().min(1).max(365).default(30),
  HALFSPLIT_REQUESTS_PER_MIN: z.coerce.number().int().min(1).default(6000),
  HALFSPLIT_ORG_OPEN_UPLOADS: z.coerce.number().int().min(1).default(200),
  HALFSPLIT_ORG_STORED_GIB: z.coerce.number().min(0.001).default(1024),
  HALFSPLIT_ORG_EVENT_STREAMS: z.coerce.number().int().min(1).default(500),
  HALFSPLIT_ORG_REQUESTS_PER_MIN: z.coerce.number().int().min(1).default(6000),
  HALFSPLIT_DIARY_PER_MIN: z.coerce.number().int().min(1).default(30),
  HALFSPLIT_MAX_UPLOAD_MIB: z.coerce.number().int().min(1).max(65_536).default(2048),
  HALFSPLIT_HEARTBEAT_S: z.coerce.number().min(0.01).max(110).default(20),
  HALFSPLIT_CLIENT: z.string().min(1).default(builtClient),
  HALFSPLIT_TRUST_PROXY: trustedProxies.default(false),
  HALFSPLIT_REPLIES_DAYS: z.coerce.number().min(1).default(90),
  HALFSPLIT_LEAST_FREE_MIB: z.coerce.number().min(0).default(64),
  HALFSPLIT_DRAIN_S: z.coerce.number().min(0).max(600).default(0),
  HALFSPLIT_METRICS: metricsPlace.optional(),
  HALFSPLIT_TLS_CERT: z.string().min(1).optional(),
  HALFSPLIT_TLS_KEY: z.string().min(1).optional(),
});

const places = environment.pick({ HALFSPLIT_DATA: true, DATABASE_URL: true });

/**
 * Where the data lies, for programs that need nothing else: unlike `readConfig` it makes no secrets.
 * @throws WrongSettingError
 */
export function placesOf(env: NodeJS.ProcessEnv): Pick<Config, 'dataFolder' | 'databaseUrl'> {
  const { HALFSPLIT_DATA: dataFolder, DATABASE_URL: databaseUrl } = parsed(places, env);
  return { dataFolder, databaseUrl };
}

function parsed<Schema extends z.ZodType>(schema: Schema, env: NodeJS.ProcessEnv): z.output<Schema> {
  const result = schema.safeParse(env);
  if (result.success) return result.data;
  const faults = result.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
  throw new WrongSettingError('Configuration', faults.join('; '));
}

/** Paths of PEM files: the certificate, with those between it and its authority after it, and its private key. */
export type TlsFiles = { readonly certificate: string; readonly key: string };

/** Nobody, the last so many, or those at these addresses and nets (as `@fastify/proxy-addr` reads them). */
export type TrustedProxies = false | number | string[];

/** The newest first. */
export type TokenSecrets = readonly [string, ...string[]];

export type Config = {
  readonly dataFolder: string;
  readonly databaseUrl: string | undefined;
  readonly host: string;
  readonly port: number;
  readonly logLevel: string;
  /** The first signs tokens and keys digests; what one of the others signed is still taken. */
  readonly tokenSecrets: TokenSecrets;
  /** Ed25519, private: what logs are signed with. */
  readonly signingKey: KeyObject;
  readonly accessTokenS: number;
  readonly refreshTokenDays: number;
  readonly requestsPerMin: number;
  /** Requests per address to the pages of clients' diaries, which nobody signs in for. */
  readonly diaryPerMin: number;
  /** The most that one organisation may use. */
  readonly quotas: Readonly<Record<QuotaName, number>>;
  readonly maxUploadBytes: number;
  /** Seconds between signs of life on a stream of events; less than the 120 s after which a silent socket is closed. */
  readonly heartbeatS: number;
  /** The folder that the built client is in. */
  readonly clientFolder: string;
  readonly trustProxy: TrustedProxies;
  /** How long a write that is sent again under its key gets its reply again. Assumed: longer than a phone lies in a drawer. */
  readonly keepRepliesDays: number;
  /** Of the data folder's disk: with less, the server says that it isn't ready. Assumed: room for what is under way. */
  readonly leastFreeBytes: number;
  /** Seconds between saying that it isn't ready any more and taking no more requests, for a proxy to notice. */
  readonly drainS: number;
  /** Where figures are told for Prometheus; null where they are not. */
  readonly metrics: { readonly host: string; readonly port: number } | null;
  /** Where TLS ends here, and not at a proxy. */
  readonly tls: TlsFiles | null;
};

/**
 * Reads the configuration from environment variables (README, "Configuration").
 * A missing token secret and signing key are made on first start and kept in the data folder, readable by its owner only.
 * @throws WrongSettingError when a variable, or what is kept of it, has a value that can't be used
 */
export function readConfig(env: NodeJS.ProcessEnv): Config {
  const value = parsed(environment, env);
  return {
    dataFolder: value.HALFSPLIT_DATA,
    databaseUrl: value.DATABASE_URL,
    host: value.HOST,
    port: value.PORT,
    logLevel: value.LOG_LEVEL,
    tokenSecrets: tokenSecretsOf(value),
    signingKey: value.HALFSPLIT_SIGNING_KEY ?? keptKey(value.HALFSPLIT_DATA),
    accessTokenS: value.HALFSPLIT_ACCESS_TOKEN_S,
    refreshTokenDays: value.HALFSPLIT_REFRESH_TOKEN_DAYS,
    requestsPerMin: value.HALFSPLIT_REQUESTS_PER_MIN,
    diaryPerMin: value.HALFSPLIT_DIARY_PER_MIN,
    quotas: {
      openUploads: value.HALFSPLIT_ORG_OPEN_UPLOADS,
      storedBytes: Math.floor(value.HALFSPLIT_ORG_STORED_GIB * 1024 ** 3),
      eventStreams: value.HALFSPLIT_ORG_EVENT_STREAMS,
      requestsPerMin: value.HALFSPLIT_ORG_REQUESTS_PER_MIN,
    },
    maxUploadBytes: value.HALFSPLIT_MAX_UPLOAD_MIB * 1024 * 1024,
    heartbeatS: value.HALFSPLIT_HEARTBEAT_S,
    clientFolder: resolve(value.HALFSPLIT_CLIENT),
    trustProxy: value.HALFSPLIT_TRUST_PROXY,
    keepRepliesDays: value.HALFSPLIT_REPLIES_DAYS,
    leastFreeBytes: value.HALFSPLIT_LEAST_FREE_MIB * 1024 * 1024,
    drainS: value.HALFSPLIT_DRAIN_S,
    metrics: value.HALFSPLIT_METRICS ?? null,
    tls: tlsOf(value),
  };
}

function tlsOf({
  HALFSPLIT_TLS_CERT: certificate,
  HALFSPLIT_TLS_KEY: key,
}: Pick<z.output<typeof environment>, 'HALFSPLIT_TLS_CERT' | 'HALFSPLIT_TLS_KEY'>): TlsFiles | null {
  if (certificate === undefined && key === undefined) return null;
  if (certificate === undefined || key === undefined)
    throw new WrongSettingError(
      certificate === undefined ? 'HALFSPLIT_TLS_CERT' : 'HALFSPLIT_TLS_KEY',
      'certificate and key are given together',
    );
  return { certificate, key };
}

type Given = Pick<
  z.output<typeof environment>,
  'HALFSPLIT_DATA' | 'HALFSPLIT_TOKEN_SECRET' | 'HALFSPLIT_OLD_TOKEN_SECRETS'
>;

/** From the environment, else from the data folder, whose file has one a line. */
function tokenSecretsOf({
  HALFSPLIT_DATA: folder,
  HALFSPLIT_TOKEN_SECRET: given,
  HALFSPLIT_OLD_TOKEN_SECRETS: old = [],
}: Given): TokenSecrets {
  if (given !== undefined) return [given, ...old];
  const [newest = '', ...before] = keptSecret(folder, tokenSecretFile, newSecret).split(/\s+/);
  for (const secret of [newest, ...before])
    if (secret.length < leastSecret)
      throw new WrongSettingError(
        join(folder, tokenSecretFile),
        `a secret of under ${leastSecret} characters`,
      );
  return [newest, ...before, ...old];
}

/**
 * Makes another secret in a data folder, which signs from the next start on. What the one before signed is taken until
 * the secret is rotated once more, so that nobody is signed out; where it leaked, `forget` ends that at once.
 * @returns how many secrets are kept now
 */
export function rotateTokenSecret(dataFolder: string, { forget }: { readonly forget: boolean }): number {
  const path = join(dataFolder, tokenSecretFile);
  const [before = ''] = keptSecret(dataFolder, tokenSecretFile, newSecret).split(/\s+/);
  const secrets = forget ? [newSecret()] : [newSecret(), before];
  const draft = `${path}.new`;
  writeFileSync(draft, `${secrets.join('\n')}\n`, { mode: 0o600 });
  renameSync(draft, path);
  return secrets.length;
}

const tokenSecretFile = 'token-secret';
const signingKeyFile = 'signing-key';
/** What a data folder keeps that was not given, each readable by its owner only. */
export const secretFiles = [tokenSecretFile, signingKeyFile] as const;

const newSecret = (): string => randomBytes(48).toString('base64url');
function keptKey(dataFolder: string): KeyObject {
  const pem = keptSecret(dataFolder, signingKeyFile, newKey);
  try {
    return readKey(pem);
  } catch (error) {
    throw new WrongSettingError(join(dataFolder, signingKeyFile), 'holds no private key for Ed25519', {
      cause: error,
    });
  }
}

const newKey = (): string =>
  generateKeyPairSync('ed25519').privateKey.export({ type: 'pkcs8', format: 'pem' }).toString().trim();

function keptSecret(dataFolder: string, name: string, make: () => string): string {
  const path = join(dataFolder, name);
  if (existsSync(path)) {
    chmodSync(path, 0o600);
    return readFileSync(path, 'utf8').trim();
  }
  mkdirSync(dataFolder, { recursive: true, mode: 0o700 });
  const secret = make();
  writeFileSync(path, `${secret}\n`, { mode: 0o600, flag: 'wx' });
  return secret;
}
