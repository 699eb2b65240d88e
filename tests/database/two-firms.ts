import { createHash, randomUUID } from 'node:crypto';
import type { Database, Tenant } from '../../src/database/index.ts';

/** An organisation with at least one row in every table. */
export type Firm = {
  tenant: Tenant & { memberId: string };
  colleagueId: string;
  ticketId: string;
  chainId: string;
  packetId: string;
  fileSha256: string;
};

const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
const at = new Date('2026-03-01T09:30:00.125Z');

/** Fills an organisation by the ways a request has: everything here also shows that a request may do it. */
export async function makeFirm(database: Database, handle: string): Promise<Firm> {
  const [orgId, memberId, colleagueId] = [randomUUID(), randomUUID(), randomUUID()] as const;
  const [siteId, chainId, ticketId, packetId] = [
    randomUUID(),
    randomUUID(),
    randomUUID(),
    randomUUID(),
  ] as const;
  await database.provision(async (tx) => {
    await tx.organisation.create({ data: { orgId, handle, name: handle, settings: {} } });
    const person = { orgId, name: 'Somebody', passwordHash: 'none' };
    await tx.member.createMany({
      data: [
        { ...person, id: memberId, email: 'one@example.org', role: 'support' },
        { ...person, id: colleagueId, email: 'two@example.org', role: 'technician' },
      ],
    });
  });
  const own = { orgId, id: randomUUID() };
  const fileSha256 = hash(`file of ${handle}`);
  await database.inTenant({ orgId, memberId }, async (tx) => {
    await tx.session.create({
      data: { ...own, memberId, device: '', startedAt: new Date(), seenAt: new Date() },
    });
    await tx.refreshToken.create({
      data: {
        ...own,
        memberId,
        familyId: own.id,
        tokenHash: hash(handle),
        expiresAt: new Date('2999-01-01'),
      },
    });
    await tx.authenticatorApp.create({
      data: { orgId, memberId, sealedKey: 'sealed', lastStep: 1n, addedAt: at, usedAt: at },
    });
    await tx.recoveryCode.create({ data: { orgId, memberId, codeHash: hash('code') } });
    await tx.secondStep.create({
      data: { orgId, memberId, tokenHash: hash('step'), expiresAt: new Date('2999-01-01') },
    });
    await tx.auditEntry.create({
      data: { ...own, at: new Date(), kind: 'signedIn', actorId: memberId, memberId: colleagueId },
    });
    await tx.idempotencyRecord.create({ data: { orgId, memberId, key: 'key', requestHash: 'hash' } });
    await tx.firmwareLevel.create({ data: { ...own, model: 'P-1', minimum: '3.10' } });
    await tx.site.create({
      data: { orgId, id: siteId, document: {}, clientName: 'Client', searchText: 'client' },
    });
    await tx.chain.create({ data: { orgId, id: chainId, siteId, name: 'Cinema', searchText: '' } });
    await tx.chainVersion.create({
      data: { orgId, chainId, version: 1, document: {}, changes: [], changedBy: memberId },
    });
    await tx.ticket.create({
      data: ticketOf({ orgId, id: ticketId, siteId, chainId, assigneeId: memberId }),
    });
    await tx.ticketEvent.create({
      data: {
        orgId,
        ticketId,
        sequence: 1,
        type: 'opened',
        payload: {},
        actorId: memberId,
        at,
        machineVersion: 1,
        previousHash: '0'.repeat(64),
        hash: hash('event'),
      },
    });
    await tx.ticketText.create({
      data: { orgId, ticketId, sequence: 1, pointer: '/text', salt: hash('salt'), text: 'Hums.' },
    });
    await tx.change.create({
      data: { ...own, ticketId, chainId, kind: 'reseat', status: 'declared', openedAt: at },
    });
    await tx.storedFile.create({
      data: { orgId, sha256: fileSha256, sizeBytes: 12n, mediaType: 'text/plain' },
    });
    await tx.evidence.create({
      data: {
        ...own,
        ticketId,
        kind: 'log',
        tie: {},
        sha256: fileSha256,
        takenAt: at,
        uploadedAt: at,
        memberId,
      },
    });
    await tx.diary.create({
      data: {
        orgId,
        id: randomUUID(),
        ticketId,
        codeHash: hash(orgId),
        openedBy: memberId,
        openedAt: at,
        until: new Date(at.getTime() + 86_400_000),
      },
    });
    await tx.packet.create({
      data: {
        orgId,
        id: packetId,
        ticketId,
        version: 1,
        files: [],
        news: [],
        caseFile: {},
        createdAt: at,
        createdBy: memberId,
      },
    });
  });
  return { tenant: { orgId, memberId }, colleagueId, ticketId, chainId, packetId, fileSha256 };
}

export const ticketOf = (ids: {
  orgId: string;
  id: string;
  siteId: string;
  chainId: string;
  assigneeId: string;
}) => ({
  ...ids,
  number: 1,
  intake: {},
  symptom: 'dropOuts',
  priority: 'normal',
  state: 'baseline',
  snapshot: {},
  machineVersion: 1,
  sequence: 1,
  openedAt: at,
  updatedAt: at,
});

/** Grants a firm's packet to the member of another. @returns the grant's id. */
export async function grantPacket(database: Database, from: Firm, to: Firm): Promise<string> {
  const id = randomUUID();
  await database.inTenant(from.tenant, (tx) =>
    tx.packetGrant.create({
      data: {
        orgId: from.tenant.orgId,
        id,
        packetId: from.packetId,
        granteeOrgId: to.tenant.orgId,
        granteeMemberId: to.tenant.memberId,
        grantedBy: from.tenant.memberId,
      },
    }),
  );
  return id;
}
