import { generateKeyPairSync } from 'node:crypto';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { readConfig, rotateTokenSecret } from '../src/config.ts';

const folder = mkdtempSync(join(tmpdir(), 'halfsplit-config-'));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the configuration', () => {
  it('makes a token secret on first start, keeps it, and lets only its owner read it', () => {
    const dataFolder = join(folder, 'data');
    const first = readConfig({ HALFSPLIT_DATA: dataFolder });
    expect(first.tokenSecrets[0].length).toBeGreaterThanOrEqual(48);
    expect(statSync(join(dataFolder, 'token-secret')).mode & 0o777).toBe(0o600);
    expect(readConfig({ HALFSPLIT_DATA: dataFolder }).tokenSecrets).toEqual(first.tokenSecrets);
  });

  it('makes a key to sign logs with on first start, keeps it, and takes no other kind', () => {
    const dataFolder = join(folder, 'signing');
    const { signingKey } = readConfig({ HALFSPLIT_DATA: dataFolder });
    expect(signingKey.asymmetricKeyType).toBe('ed25519');
    expect(statSync(join(dataFolder, 'signing-key')).mode & 0o777).toBe(0o600);
    expect(readConfig({ HALFSPLIT_DATA: dataFolder }).signingKey.equals(signingKey)).toBe(true);
    const rsa = generateKeyPairSync('rsa', { modulusLength: 2048 }).privateKey;
    for (const pem of ['no key', String(rsa.export({ type: 'pkcs8', format: 'pem' }))])
      expect(() => readConfig({ HALFSPLIT_SIGNING_KEY: pem })).toThrow(/HALFSPLIT_SIGNING_KEY/);
  });

  it('takes the secret from the environment and then writes none', () => {
    const secret = 'x'.repeat(40);
    const key = generateKeyPairSync('ed25519').privateKey.export({ type: 'pkcs8', format: 'pem' });
    const given = { HALFSPLIT_TOKEN_SECRET: secret, HALFSPLIT_SIGNING_KEY: String(key) };
    expect(readConfig({ HALFSPLIT_DATA: join(folder, 'none'), ...given }).tokenSecrets).toEqual([secret]);
    expect(() => statSync(join(folder, 'none'))).toThrow('ENOENT');
  });

  it('rotates the token secret: the newest signs, the one before is still taken unless it is to be forgotten', () => {
    const dataFolder = join(folder, 'rotated');
    const read = (env = {}) => readConfig({ HALFSPLIT_DATA: dataFolder, ...env }).tokenSecrets;
    const [first] = read();
    expect(rotateTokenSecret(dataFolder, { forget: false })).toBe(2);
    const [second, ...before] = read();
    expect(second).not.toBe(first);
    expect(before).toEqual([first]);
    rotateTokenSecret(dataFolder, { forget: false });
    expect(read()).toHaveLength(2);
    expect(read()).not.toContain(first);
    expect(rotateTokenSecret(dataFolder, { forget: true })).toBe(1);
    expect(read()).not.toContain(second);
    expect(statSync(join(dataFolder, 'token-secret')).mode & 0o777).toBe(0o600);
    const [given, old] = ['n'.repeat(32), 'o'.repeat(32)];
    expect(read({ HALFSPLIT_TOKEN_SECRET: given, HALFSPLIT_OLD_TOKEN_SECRETS: `${old}, ${first}` })).toEqual([
      given,
      old,
      first,
    ]);
    expect(() => read({ HALFSPLIT_OLD_TOKEN_SECRETS: 'short' })).toThrow(/HALFSPLIT_OLD_TOKEN_SECRETS/);
    writeFileSync(join(dataFolder, 'token-secret'), '\n');
    expect(() => read()).toThrow(/token-secret/);
  });

  it('trusts proxies by their number or addresses, never whoever sends the header', () => {
    const trusted = (said: string) =>
      readConfig({ HALFSPLIT_DATA: join(folder, 'proxies'), HALFSPLIT_TRUST_PROXY: said }).trustProxy;
    expect(trusted('false')).toBe(false);
    expect(trusted('2')).toBe(2);
    expect(trusted('10.0.0.0/8, fd00::/8,192.0.2.1')).toEqual(['10.0.0.0/8', 'fd00::/8', '192.0.2.1']);
    for (const said of [
      'true',
      '0',
      '',
      '0.0.0.0/0',
      '10.0.0.0/33',
      '10.0.0.0/8/8',
      'proxy.example',
      '10.0.0.0/x',
    ])
      expect(() => trusted(said), said).toThrow(/HALFSPLIT_TRUST_PROXY/);
  });

  it('names the variable that it cannot use', () => {
    expect(() => readConfig({ PORT: 'eighty' })).toThrow(/PORT/);
    expect(() => readConfig({ HALFSPLIT_TOKEN_SECRET: 'short' })).toThrow(/HALFSPLIT_TOKEN_SECRET/);
  });
});
