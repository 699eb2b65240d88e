import type { Database } from '../../database/index.ts';

export type OrganisationRef = { readonly orgId: string; readonly handle: string };

/** All organisations by handle; for what the program does without anybody asking, never for a route. */
export const everyOrganisation = (database: Database): Promise<OrganisationRef[]> =>
  database.lookUp((tx) =>
    tx.organisation.findMany({ select: { orgId: true, handle: true }, orderBy: { handle: 'asc' } }),
  );
