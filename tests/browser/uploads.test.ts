import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { EvidenceItem } from '../../shared/contract/evidence.ts';
import { putInOutbox, uploadEntry } from './outbox-entries.ts';
import { openStage, type Stage } from './stage.ts';

describe('files that wait on a device', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());

  it('go on where they stopped, over a link that is cut five times, and arrive whole and once', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await page.getByRole('main').getByRole('link').first().click();
    await page.getByLabel('Note').waitFor();
    const ticketId = page.url().split('/').at(-1) ?? '';
    // 5 MB of log lines, ten requests of an upload.
    const text = Array.from(
      { length: 60_000 },
      (_, at) => `<134>1 2026-01-01T00:00:00.000Z np7 video 1 - - line number ${at} of a long log`,
    ).join('\n');
    const begun: string[] = [];
    page.on('request', (request) => {
      if (request.method() === 'POST' && request.url().endsWith('/uploads')) begun.push(request.url());
    });
    // Each break comes in the middle of a request: after one whole part and some of the next.
    stage.link.breakNext(5, 700_000);
    await putInOutbox(page, uploadEntry(ticketId, 'long.log', Buffer.byteLength(text)), text);
    await page.reload();
    await page.getByText('All sent').waitFor({ timeout: 90_000 });
    expect(stage.link.breaks()).toBe(5);
    expect(begun).toHaveLength(1);
    const brask = await signIn(overHttp(stage.base), firm.handle, `brask@${firm.handle}.example`);
    const { items } = expectStatus(
      await brask.get<{ items: EvidenceItem[] }>(`/tickets/${ticketId}/evidence`),
      200,
    );
    const logs = items.filter(({ fileName }) => fileName === 'long.log');
    expect(logs).toHaveLength(1);
    expect(logs[0]?.sizeBytes).toBe(Buffer.byteLength(text));
    expect(logs[0]?.sha256).toBe(createHash('sha256').update(text).digest('hex'));
  });
});
