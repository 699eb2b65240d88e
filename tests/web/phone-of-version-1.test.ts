import { describe, expect, it } from 'vitest';
import { finding } from '../../shared/contract/chain.ts';
import { ticketCommand } from '../../shared/contract/commands.ts';
import { recordReading } from '../../shared/contract/evidence.ts';
import type { ChainAudit } from '../../shared/contract/site.ts';
import { type Ticket, ticket as ticketForm } from '../../shared/contract/ticket.ts';
import type { Known } from '../../src/web/projection/project.ts';
import { project } from '../../src/web/projection/project.ts';
import { documentVersion, type KeptDocument, keptAsToday } from '../../src/web/store/kept-document.ts';
import type { OutboxEntry } from '../../src/web/store/outbox-entry.ts';
import { frozenStore, readFrozenPhone } from '../frozen/frozen-1.ts';
import { asHeldByVersion1, sentenceThen, withoutReasons } from '../frozen/held-by-version-1.ts';

const phone = readFrozenPhone();
const documents = frozenStore(phone, 'documents').map(({ value }) => value as KeptDocument);
const outbox = frozenStore(phone, 'outbox').map(({ key, value }) => ({
  ...(value as OutboxEntry),
  order: Number(key),
}));

async function todayAt<Body>(path: string): Promise<Body> {
  const kept = documents.find((document) => document.path === path);
  if (kept === undefined) throw new Error(`the phone kept nothing at ${path}`);
  return (await keptAsToday(kept))?.body as Body;
}

const auditPath = /^\/chains\/[^/?]+\/audit/;
const hasNewForm = (path: string): boolean =>
  /^\/(tickets|chains)\/[^/?]+$/.test(path) || /^\/tickets\?/.test(path) || auditPath.test(path);

describe('what the phone of version 1 kept', () => {
  it('is there where a visit needs it, and to be read whole from the server', async () => {
    const gone = [];
    for (const kept of documents) {
      const today = await keptAsToday(kept);
      if (today === null) {
        gone.push(kept.path.split('/').at(-1));
        continue;
      }
      expect(today, kept.path).toMatchObject({ path: kept.path, readAt: kept.readAt, etag: null });
      expect(await keptAsToday(today)).toBe(today);
      if (!hasNewForm(kept.path)) expect(today.body).toStrictEqual(kept.body);
    }
    // What the server, or the phone itself, says anew of what is there.
    expect(new Set(gone)).toEqual(
      new Set(['budget', 'edids', 'applicable-changes', 'log-findings', 'phone-plan', 'plan']),
    );
  });

  it.each(Object.keys(phone.tickets))('has the ticket as it was: %s', async (name) => {
    const path = `/tickets/${phone.tickets[name as keyof typeof phone.tickets]}`;
    const { triage, missing, allowedNow, due, visitMin, intake, ...rest } = await todayAt<Ticket>(path);
    const { promised, ...asked } = intake;
    expect([due, visitMin, promised]).toEqual([null, null, '']);
    const then = documents.find((document) => document.path === path)?.body as Ticket;
    expect(ticketForm.shape.triage.parse(triage)).toStrictEqual(triage);
    expect({
      ...rest,
      intake: asked,
      missing: missing.map((item) => ({ ...item, text: sentenceThen(item.text) })),
      allowedNow: allowedNow.map((command) => ({ ...command, label: sentenceThen(command.label) })),
      triage: asHeldByVersion1(triage),
    }).toStrictEqual(then);
  });

  it('has the audits of its chains, in the sentences of then', async () => {
    const audits = documents.filter(({ path }) => auditPath.test(path));
    expect(audits.length).toBeGreaterThan(0);
    for (const { path, body } of audits) {
      const then = (body as { findings: { text: string }[] }).findings.map(({ text }) => text);
      const { findings } = await todayAt<ChainAudit>(path);
      expect(findings.map(({ text }) => text.values)).toEqual(then.map((sentence) => ({ sentence })));
      expect(finding.array().safeParse(findings).success).toBe(true);
    }
  });

  it('is not taken from a newer version: it is read anew', async () => {
    const [kept] = documents;
    expect(kept && (await keptAsToday({ ...kept, version: documentVersion + 1 }))).toBeNull();
  });
});

describe('what waited in the outbox of version 1', () => {
  it('is what the server takes today, but for what it refused then', () => {
    for (const entry of outbox.filter(({ state }) => state !== 'refused')) {
      if (entry.kind === 'command') expect(ticketCommand.safeParse(entry.command).error).toBeUndefined();
      if (entry.kind === 'reading') expect(recordReading.safeParse(entry.reading).error).toBeUndefined();
    }
  });

  it('leads on this phone to what it led to then', async () => {
    const { visit } = phone.tickets;
    const ticket = await todayAt<Ticket>(`/tickets/${visit}`);
    const known: Known = {
      member: { id: phone.memberId, role: 'technician' },
      chain: await todayAt(`/chains/${ticket.chainId}`),
      audit: await todayAt(`/chains/${ticket.chainId}/audit?duringTriage=true`),
      firmwareLevels: (await todayAt<{ items: [] }>('/firmware-levels')).items,
      organisation: await todayAt('/organisation'),
    };
    const entries = outbox.filter(({ ticketId }) => ticketId === visit);
    const projected = project(ticket, entries, known, phone.frozenAt);
    expect(projected.refused).toBeNull();
    expect([projected.ahead, projected.ticket.state]).toEqual([phone.projected.ahead, phone.projected.state]);
    const [held, then] = [asHeldByVersion1(projected.ticket.triage), { ...phone.projected.triage }];
    expect(withoutReasons(held)).toStrictEqual(withoutReasons(then));
  });
});
