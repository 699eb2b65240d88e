import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { Upload } from '@tus/server';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { UploadStore } from '../../../src/features/evidence/upload-store.ts';

let all: string;
let folder: string;
let uploads: UploadStore;
beforeAll(async () => {
  all = await mkdtemp(join(tmpdir(), 'uploads-'));
});
beforeEach(async () => {
  folder = await mkdtemp(join(all, 'of-'));
  uploads = new UploadStore(folder);
});
// Not after each: the store makes sure of its folder and tells nobody when it has.
afterAll(() => rm(all, { recursive: true, force: true }));

const day = 24 * 3_600_000;
const begin = (id: string, daysAgo: number) =>
  uploads.create(
    new Upload({
      id,
      size: 4,
      offset: 0,
      metadata: { member: 'm' },
      creation_date: new Date(Date.now() - daysAgo * day).toISOString(),
    }),
  );

test('what nobody came back for is removed after a week, and so are the notes of what was finished', async () => {
  await begin('abandoned', 8);
  await begin('finished', 8);
  await begin('under-way', 6);
  await uploads.noteFinished('finished', 'evidence');
  await rm(join(folder, 'finished'));
  await uploads.removeAbandoned(new Date());
  expect((await readdir(folder)).sort()).toEqual(['under-way', 'under-way.json']);
});

test('an upload is whole once all its bytes are here, until evidence was made of it', async () => {
  await begin('one', 0);
  expect(await uploads.isWhole('one')).toBe(false);
  await uploads.write(Readable.from([Buffer.from('four')]), 'one', 0);
  expect(await uploads.isWhole('one')).toBe(true);
  await uploads.noteFinished('one', 'evidence');
  expect(await uploads.isWhole('one')).toBe(false);
  expect(await uploads.getUpload('one')).toMatchObject({ size: 4, offset: 4 });
});
