import { z } from 'zod';
import { auditKinds } from './audit-kinds.ts';
import { id, instant, pageQuery } from './primitives.ts';

/** An entry of the audit log: who did what to whom, by the ids of members; their names are those of today. */
export const auditEntry = z.object({
  id,
  at: instant,
  kind: z.enum(auditKinds),
  /** Null where nobody signed in: whoever runs the server, or somebody who tried to sign in. */
  actorId: id.nullable(),
  actorName: z.string().nullable(),
  /** The member to whom it was done, or whose sign-in was tried; null where there is none, or no such account. */
  memberId: id.nullable(),
  memberName: z.string().nullable(),
  /** The ticket, packet or site that it was about. */
  aboutId: id.nullable(),
  /**
   * `signedIn`: the way, one of password, app, recoveryCode. `memberAdded`: the role; `memberChanged`: the role, and
   * `inactive` after it where they may not sign in. `accessRefused`: method and address of the route.
   */
  detail: z.string().nullable(),
});
export type AuditEntry = z.infer<typeof auditEntry>;

/** `memberId`: what that member did, or what was done to them. */
export const auditLogQuery = pageQuery.extend({ memberId: id.optional() });
