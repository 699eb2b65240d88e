import { createHash, generateKeyPairSync, sign } from 'node:crypto';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { checkPacket, type FileCheck } from '../../src/web/second-line/check-packet.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const sha256 = (content: Uint8Array) => createHash('sha256').update(content).digest('hex');

/** A bag as RFC 8493 has it; its hashes are Node's, not the browser's. */
function bag(payload: Record<string, string>): Record<string, Uint8Array> {
  const data = Object.entries(payload).map(([path, text]) => [path, bytes(text)] as const);
  const listOf = (files: readonly (readonly [string, Uint8Array])[]) =>
    bytes(files.map(([path, content]) => `${sha256(content)}  ${path}\n`).join(''));
  const tags = [
    ['bagit.txt', bytes('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n')],
    ['manifest-sha256.txt', listOf(data)],
  ] as const;
  return Object.fromEntries([...data, ...tags, ['tagmanifest-sha256.txt', listOf(tags)]]);
}
const zipOf = (files: Record<string, Uint8Array>): Blob =>
  new Blob([
    zipSync(Object.fromEntries(Object.entries(files).map(([path, file]) => [`case-1/${path}`, file]))),
  ]);
async function statuses(zip: Blob): Promise<Record<string, FileCheck['status']>> {
  const check = await checkPacket(zip);
  if (check.kind !== 'checked') throw new Error(check.kind);
  return Object.fromEntries(check.files.map(({ path, status }) => [path, status]));
}

describe('checking a packet on this device', () => {
  const payload = { 'data/case.json': '{"case":1}', 'data/log/events.jsonl': 'one\ntwo\n' };

  it('finds every file of a sound bag unchanged, and says how far it is', async () => {
    const progress: string[] = [];
    const check = await checkPacket(zipOf(bag(payload)), (done, of) => progress.push(`${done}/${of}`));
    expect(check).toEqual({
      kind: 'checked',
      folder: 'case-1',
      files: ['bagit.txt', 'data/case.json', 'data/log/events.jsonl', 'manifest-sha256.txt'].map((path) => ({
        path,
        status: 'ok',
      })),
      signature: { kind: 'none' },
    });
    expect(progress).toEqual(['0/4', '1/4', '2/4', '3/4']);
  });

  it('tells by whose key it is signed, and that what was signed was changed since', async () => {
    const { privateKey, publicKey } = generateKeyPairSync('ed25519');
    const pem = String(publicKey.export({ type: 'spki', format: 'pem' }));
    const files = bag(payload);
    const manifest = files['tagmanifest-sha256.txt'] ?? new Uint8Array();
    const signed = {
      ...files,
      'public-key.pem': bytes(pem),
      'tagmanifest-sha256.sig': sign(null, manifest, privateKey),
    };
    const signatureIn = async (zip: Record<string, Uint8Array>) => {
      const check = await checkPacket(zipOf(zip));
      return check.kind === 'checked' ? check.signature : null;
    };
    const fingerprint = sha256(publicKey.export({ type: 'spki', format: 'der' }));
    expect(await signatureIn(signed)).toEqual({ kind: 'valid', fingerprint });
    const rehashed = bag({ ...payload, 'data/case.json': '{"case":2}' });
    expect(await signatureIn({ ...signed, ...rehashed })).toEqual({ kind: 'wrong' });
    expect(await signatureIn({ ...signed, 'public-key.pem': bytes('no key') })).toEqual({ kind: 'wrong' });
    const other = generateKeyPairSync('ed25519').publicKey.export({ type: 'spki', format: 'pem' });
    expect(await signatureIn({ ...signed, 'public-key.pem': bytes(String(other)) })).toEqual({
      kind: 'wrong',
    });
    expect((await statuses(zipOf(signed)))['tagmanifest-sha256.sig']).toBeUndefined();
  });

  it('names the file that one changed letter is in', async () => {
    const files = { ...bag(payload), 'data/case.json': bytes('{"case":2}') };
    expect(await statuses(zipOf(files))).toMatchObject({
      'data/case.json': 'changed',
      'data/log/events.jsonl': 'ok',
    });
  });

  it('finds out a manifest that was rewritten to match', async () => {
    const other = bag({ ...payload, 'data/case.json': '{"case":2}' });
    const files = {
      ...other,
      'tagmanifest-sha256.txt': bag(payload)['tagmanifest-sha256.txt'] as Uint8Array,
    };
    expect(await statuses(zipOf(files))).toMatchObject({
      'data/case.json': 'ok',
      'manifest-sha256.txt': 'changed',
    });
  });

  it('says what is missing and what no list knows', async () => {
    const { 'data/case.json': _left, ...files } = bag(payload);
    expect(await statuses(zipOf({ ...files, 'data/extra.txt': bytes('more') }))).toMatchObject({
      'data/case.json': 'missing',
      'data/extra.txt': 'unlisted',
      'data/log/events.jsonl': 'ok',
    });
  });

  it('reads paths in which a percent sign is encoded (RFC 8493, section 2.1.3)', async () => {
    const sound = bag({ 'data/100 %.txt': 'all of it' });
    const encoded = new TextDecoder().decode(sound['manifest-sha256.txt']).replace('100 %', '100 %25');
    const files = { ...sound, 'manifest-sha256.txt': bytes(encoded) };
    expect((await statuses(zipOf(files)))['data/100 %.txt']).toBe('ok');
  });

  it('knows what is no zip, and what is no packet', async () => {
    expect(await checkPacket(new Blob(['not a zip']))).toEqual({ kind: 'noZip' });
    expect(await checkPacket(zipOf({ 'letter.txt': bytes('Dear all') }))).toEqual({ kind: 'noManifest' });
  });
});
