import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { z } from 'zod';
import type { edidReadings } from '../../../shared/contract/signal.ts';
import { decodeEdid, encodeEdid, limitEdid } from '../../../shared/signal/edid/index.ts';
import { homeCinema, withPort } from '../../chain/build-chain.ts';
import { display18, edidHex } from '../../signal/link-budget/build-edid.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf } from '../../support/tickets.ts';
import { postForm } from '../evidence/form-client.ts';

const whole = edidHex(display18);

function limitedTo9Gbps(): string {
  const { edid } = decodeEdid(Uint8Array.from(Buffer.from(whole, 'hex')));
  if (edid === null) throw new Error('the test’s own EDID does not decode');
  return Buffer.from(encodeEdid(limitEdid(edid, { maxTmdsCharacterRateMHz: 300, dropFrl: true }))).toString(
    'hex',
  );
}

describe.each(databaseKinds())('EDIDs read in a chain, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  it('are compared by themselves: along the chain, and at one place over time', async () => {
    const { dispatcher, technician } = test.home;
    const site = await dispatcher.post('/sites', { body: { client: 'C', address: 'A' } });
    const siteId = bodyOf<{ id: string }>(site, 201).id;
    const recorded = withPort(homeCinema(), 'projector', 'in1', { edidHex: whole });
    const chain = withPort(recorded, 'receiver', 'out1', { edidHex: limitedTo9Gbps() });
    const stored = await dispatcher.post(`/sites/${siteId}/chains`, { body: chain });
    const chainId = bodyOf<{ id: string }>(stored, 201).id;
    const intake = { symptom: { kind: 'wrongRateOrResolution' } };
    const opened = await dispatcher.post('/tickets', {
      body: { siteId, chainId, intake, assigneeId: technician.id },
    });
    const ticketId = bodyOf<{ id: string }>(opened, 201).id;
    const about = { kind: 'edid', tie: { deviceId: 'projector', portId: 'in1' } };
    bodyOf(
      await postForm(test, technician, ticketId, { about, file: Buffer.from(limitedTo9Gbps(), 'hex') }),
      201,
    );

    const { readings, comparisons } = bodyOf<z.infer<typeof edidReadings>>(
      await test.home.support.get(`/chains/${chainId}/edids`),
      200,
    );
    const at = (index: number) => `${readings[index]?.deviceId} ${readings[index]?.from.kind}`;
    const pairs = comparisons.map((one) => [one.perspective, at(one.first), at(one.second), one.same]);
    expect(pairs).toEqual(
      expect.arrayContaining([
        ['passedOn', 'projector record', 'receiver record', false],
        ['overTime', 'projector record', 'projector evidence', false],
        ['passedOn', 'projector evidence', 'receiver record', true],
      ]),
    );
    expect(pairs).toHaveLength(3);
    const passedOn = comparisons.find((one) => one.perspective === 'passedOn' && !one.same);
    expect(passedOn?.differences).toContainEqual(
      expect.objectContaining({ topic: 'tmdsRate', change: 'changed' }),
    );
    expect(comparisons.find((one) => one.same)?.differences).toEqual([]);
  });
});
