import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';

describe.each(databaseKinds())('firmware levels, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  it('are one for each model, however that is written', async () => {
    const { admin } = test.home;
    const first = await admin.post('/firmware-levels', { body: { model: 'Nimbrel NP-7', minimum: '3.10' } });
    expect(first.status).toBe(201);
    const again = await admin.post('/firmware-levels', { body: { model: 'nimbrel np7', minimum: '4' } });
    expect(again.status).toBe(409);
    expect(again.body).toMatchObject({ type: '/problems/already-exists' });
    expect(again.body.said.values).toEqual({ model: 'Nimbrel NP-7', minimum: '3.10' });
    const other = await admin.post('/firmware-levels', { body: { model: 'Nimbrel NP-8', minimum: '1' } });
    const path = `/firmware-levels/${other.body.id}`;
    const renamed = await admin.put(path, {
      body: { model: 'NIMBREL_NP-7', minimum: '1' },
      ifMatch: other.headers.etag ?? '',
    });
    expect(renamed.status).toBe(409);
    const kept = await admin.put(`/firmware-levels/${first.body.id}`, {
      body: { model: 'Nimbrel NP7', minimum: '3.11' },
      ifMatch: first.headers.etag ?? '',
    });
    expect(kept.body).toMatchObject({ model: 'Nimbrel NP7', minimum: '3.11', version: 2 });
  });
});
