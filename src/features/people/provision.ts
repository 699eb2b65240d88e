import type { z } from 'zod';
import type { organisationSettings } from '../../../shared/contract/organisation.ts';
import type { newMember } from '../../../shared/contract/people.ts';
import type { CommandLineServices } from '../../services.ts';
import { insertOrganisation } from '../organisation/index.ts';
import { hashPassword } from './passwords.ts';

export type NewOrganisation = {
  orgId?: string;
  handle: string;
  name: string;
  settings?: z.input<typeof organisationSettings>;
  members: readonly (z.infer<typeof newMember> & { id?: string })[];
};

/** Creates an organisation with its first members; for the command line and the demo, never for a route. */
export async function provisionOrganisation(
  services: CommandLineServices,
  input: NewOrganisation,
): Promise<{ orgId: string }> {
  const orgId = input.orgId ?? services.newId();
  const members = await Promise.all(
    input.members.map(async ({ password, id, ...member }) => ({
      ...member,
      orgId,
      id: id ?? services.newId(),
      passwordHash: await hashPassword(password),
    })),
  );
  await services.database.provision(async (tx) => {
    const { handle, name, settings } = input;
    await insertOrganisation(tx, { orgId, handle, name, settings });
    await tx.member.createMany({ data: members });
  });
  return { orgId };
}
