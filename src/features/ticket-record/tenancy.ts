import type { TenantTransaction } from '../../database/index.ts';

/** Whose rows are meant; the context of a request is one, and what works without a request makes its own. */
export type Tenancy = { readonly tx: TenantTransaction; readonly actor: { readonly orgId: string } };
