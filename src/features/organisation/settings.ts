import type { z } from 'zod';
import {
  type OrganisationSettings,
  type organisation,
  organisationSettings,
  type organisationUpdate,
} from '../../../shared/contract/people.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type Actor, found, mismatch, type Outcome } from '../../http/index.ts';

type Organisation = z.infer<typeof organisation>;

async function organisationView(tx: TenantTransaction, actor: Actor): Promise<Organisation> {
  const row = await tx.organisation.findUniqueOrThrow({ where: { orgId: actor.orgId } });
  return {
    id: row.orgId,
    handle: row.handle,
    name: row.name,
    settings: organisationSettings.parse(row.settings),
    version: row.version,
  };
}

/** The organisation's numbers, assumed ones where it set none. */
export async function readSettings(tx: TenantTransaction, actor: Actor): Promise<OrganisationSettings> {
  return (await organisationView(tx, actor)).settings;
}

export async function readOrganisation(tx: TenantTransaction, actor: Actor): Promise<Outcome<Organisation>> {
  return found(await organisationView(tx, actor));
}

export async function updateOrganisation(
  tx: TenantTransaction,
  actor: Actor,
  ifMatch: string | undefined,
  input: z.infer<typeof organisationUpdate>,
): Promise<Outcome<Organisation>> {
  await tx.$queryRaw`select org_id from organisation where org_id = ${actor.orgId}::uuid for update`;
  const conflict = mismatch(ifMatch, await organisationView(tx, actor));
  if (conflict !== null) return conflict;
  await tx.organisation.update({
    where: { orgId: actor.orgId },
    data: {
      name: input.name,
      settings: JSON.parse(JSON.stringify(input.settings)),
      version: { increment: 1 },
    },
  });
  return found(await organisationView(tx, actor));
}
