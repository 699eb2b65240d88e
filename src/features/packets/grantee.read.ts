import type { Database } from '../../database/index.ts';

export type Grantee = { readonly orgId: string; readonly memberId: string };

/** An active support member of whichever organisation; null when there is none under that address. */
export async function findGrantee(database: Database, memberAddress: string): Promise<Grantee | null> {
  const member = await database.lookUp((tx) =>
    tx.member.findFirst({
      where: { id: memberAddress },
      select: { orgId: true, id: true, role: true, active: true },
    }),
  );
  if (member === null || member.role !== 'support' || !member.active) return null;
  return { orgId: member.orgId, memberId: member.id };
}
