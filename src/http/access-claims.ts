import type { MemberRole } from '../../shared/contract/primitives.ts';

/** What an access token says (RFC 7519): the member, the organisation, the role at the time, and the session. */
export type AccessClaims = { sub: string; org: string; role: MemberRole; sid: string };
