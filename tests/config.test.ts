import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { readConfig } from '../src/config.ts';

const folder = mkdtempSync(join(tmpdir(), 'halfsplit-config-'));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the configuration', () => {
  it('makes a token secret on first start, keeps it, and lets only its owner read it', () => {
    const dataFolder = join(folder, 'data');
    const first = readConfig({ HALFSPLIT_DATA: dataFolder });
    expect(first.tokenSecret.length).toBeGreaterThanOrEqual(48);
    expect(statSync(join(dataFolder, 'token-secret')).mode & 0o777).toBe(0o600);
    expect(readConfig({ HALFSPLIT_DATA: dataFolder }).tokenSecret).toBe(first.tokenSecret);
  });

  it('takes the secret from the environment and then writes none', () => {
    const secret = 'x'.repeat(40);
    expect(
      readConfig({ HALFSPLIT_DATA: join(folder, 'none'), HALFSPLIT_TOKEN_SECRET: secret }).tokenSecret,
    ).toBe(secret);
    expect(() => statSync(join(folder, 'none'))).toThrow('ENOENT');
  });

  it('names the variable that it cannot use', () => {
    expect(() => readConfig({ PORT: 'eighty' })).toThrow(/PORT/);
    expect(() => readConfig({ HALFSPLIT_TOKEN_SECRET: 'short' })).toThrow(/HALFSPLIT_TOKEN_SECRET/);
  });
});
