// Lists that are needed at run time apart from the schemas made of them, as in triage-names.ts.

/** What a member is to the organisation; `support` is second line. */
export const memberRoles = ['dispatcher', 'technician', 'support', 'admin'] as const;
export type MemberRole = (typeof memberRoles)[number];
