import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Prisma } from '../../src/database/index.ts';
import { databaseKinds, openTestDatabase, type TestDatabase } from '../support/test-database.ts';
import { asRole, codeOf, insufficientPrivilege, type Sql } from './as-role.ts';
import { type Firm, grantPacket, makeFirm } from './two-firms.ts';

describe.each(databaseKinds())('a packet granted to another organisation on the %s database', (kind) => {
  let test: TestDatabase;
  let owner: Firm;
  let guest: Firm;
  let grantId: string;

  beforeAll(async () => {
    test = await openTestDatabase(kind);
  });
  afterAll(() => test.drop());
  let count = 0;
  beforeEach(async () => {
    count += 1;
    owner = await makeFirm(test.database, `owner-${count}`);
    guest = await makeFirm(test.database, `guest-${count}`);
    grantId = await grantPacket(test.database, owner, guest);
  });

  const asGuest = <T>(work: (sql: Sql) => Promise<T>) =>
    asRole(test.owner, 'halfsplit_request', guest.tenant, work);
  const revoke = () =>
    test.database.inTenant(owner.tenant, (tx) =>
      tx.packetGrant.updateMany({ where: { id: grantId }, data: { revokedAt: new Date() } }),
    );
  const packetsSeenBy = async (tenant: Firm['tenant']): Promise<string[]> => {
    const rows = await test.database.inTenant(tenant, (tx) => tx.packet.findMany({ select: { id: true } }));
    return rows.map(({ id }) => id).sort();
  };

  it('shows the grantee that packet beside their own, and the grant', async () => {
    expect(await packetsSeenBy(guest.tenant)).toEqual([guest.packetId, owner.packetId].sort());
    const grants = await test.database.inTenant(guest.tenant, (tx) => tx.packetGrant.findMany());
    expect(grants.map(({ id }) => id)).toEqual([grantId]);
  });

  it('shows nothing else of the organisation that granted it', async () => {
    const { rows: tables } = await test.owner.query<{ relname: string }>(
      `select relname from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
       and relname not in ('_prisma_migrations', 'sign_in_try', 'packet', 'packet_grant')`,
    );
    expect(tables.length).toBeGreaterThanOrEqual(13);
    await asGuest(async (sql) => {
      for (const { relname } of tables) {
        const { rows } = await sql(`select from ${relname} where org_id = $1`, [owner.tenant.orgId]);
        expect([relname, rows.length]).toEqual([relname, 0]);
      }
    });
  });

  it('shows it to nobody else in either organisation of the grantee or a third', async () => {
    const third = await makeFirm(test.database, `third-${count}`);
    const colleague = { orgId: guest.tenant.orgId, memberId: guest.colleagueId };
    expect(await packetsSeenBy(colleague)).toEqual([guest.packetId]);
    expect(await packetsSeenBy({ ...third.tenant, memberId: guest.tenant.memberId })).toEqual([
      third.packetId,
    ]);
    const anonymous = { orgId: guest.tenant.orgId, memberId: null };
    const seen = await test.database.inTenant(anonymous, (tx) => tx.packet.count());
    expect(seen).toBe(1);
  });

  it('lets the grantee say once that they opened it', async () => {
    const open = () =>
      test.database.inTenant(guest.tenant, (tx) =>
        tx.packetGrant.updateMany({
          where: { id: grantId, firstOpenedAt: null },
          data: { firstOpenedAt: new Date('2026-03-02T10:00:00.000Z') },
        }),
      );
    expect(await open()).toEqual({ count: 1 });
    expect(await open()).toEqual({ count: 0 });
    const again = await asGuest((sql) => sql('update packet_grant set first_opened_at = now()'));
    expect(again.rowCount).toBe(0);
    const seen = await test.database.inTenant(owner.tenant, (tx) =>
      tx.packetGrant.findUniqueOrThrow({ where: { orgId_id: { orgId: owner.tenant.orgId, id: grantId } } }),
    );
    expect(seen.firstOpenedAt?.toISOString()).toBe('2026-03-02T10:00:00.000Z');
  });

  it('lets the grantee change nothing else', async () => {
    const codes = await asGuest(async (sql) => [
      await codeOf(sql('update packet_grant set revoked_at = now()')),
      await codeOf(sql('update packet_grant set first_opened_at = now(), revoked_at = now()')),
      await codeOf(sql('update packet_grant set grantee_member_id = $1', [guest.colleagueId])),
      await codeOf(sql("update packet set news = '[]'")),
      await codeOf(sql('delete from packet_grant')),
      await codeOf(
        sql(
          `insert into packet_grant select (jsonb_populate_record(g, jsonb_build_object('id', gen_random_uuid(),
            'grantee_member_id', $1::text))).* from packet_grant g`,
          [guest.colleagueId],
        ),
      ),
    ]);
    expect(codes).toEqual(codes.map(() => insufficientPrivilege));
  });

  it('is gone for the grantee once revoked, for good', async () => {
    await revoke();
    expect(await packetsSeenBy(guest.tenant)).toEqual([guest.packetId]);
    expect(await test.database.inTenant(guest.tenant, (tx) => tx.packetGrant.count())).toBe(0);
    const revived = await test.database.inTenant(owner.tenant, (tx) =>
      tx.packetGrant.updateMany({ where: { id: grantId }, data: { revokedAt: null } }),
    );
    expect(revived).toEqual({ count: 0 });
  });

  it('is granted to the same member once at a time, and can be granted again', async () => {
    await expect(grantPacket(test.database, owner, guest)).rejects.toBeInstanceOf(
      Prisma.PrismaClientKnownRequestError,
    );
    await revoke();
    await grantPacket(test.database, owner, guest);
    expect(await packetsSeenBy(guest.tenant)).toContain(owner.packetId);
  });

  it("can only be granted by its owner, to another organisation's member who exists", async () => {
    const grant = (changed: object) =>
      asRole(test.owner, 'halfsplit_request', owner.tenant, (sql) =>
        codeOf(
          sql(
            `insert into packet_grant select (jsonb_populate_record(g, '{"id": "00000000-0000-4000-8000-000000000000"}'
              || $1::jsonb)).* from packet_grant g`,
            [JSON.stringify(changed)],
          ),
        ),
      );
    const itself = { grantee_org_id: owner.tenant.orgId, grantee_member_id: owner.colleagueId };
    expect(await grant(itself)).toBe('23514');
    expect(await grant({ grantee_member_id: owner.colleagueId })).toBe('23503');
    expect(await grant({ packet_id: guest.packetId })).toBe('23503');
    expect(await grant({ grantee_member_id: guest.colleagueId })).toBe('succeeded');
  });
});
