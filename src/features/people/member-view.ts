import type { Member } from '../../../shared/contract/people.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';

type MemberRow = { id: string; name: string; email: string; role: string; active: boolean; version: number };

/** A member as the API shows them. */
export const memberView = (row: MemberRow): Member => ({
  id: row.id,
  name: row.name,
  email: row.email,
  role: row.role as MemberRole,
  active: row.active,
  version: row.version,
});
