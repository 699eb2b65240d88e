// Apart from the schema, as in quota-names.ts: the client loads this file and not the schema library.

/** What the audit log tells: sign-ins, what members do to how they sign in, grants, exports, and what admins do. */
export const auditKinds = [
  'signedIn',
  'signInRefused',
  'codeRefused',
  'passwordRefused',
  'signedOut',
  'tokenUsedTwice',
  'sessionsEnded',
  'passwordChanged',
  'appTurnedOn',
  'appTurnedOff',
  'recoveryCodesRenewed',
  'memberAdded',
  'memberChanged',
  'memberPasswordSet',
  'memberFactorsTaken',
  'memberRecovered',
  'organisationChanged',
  'packetGranted',
  'grantRevoked',
  'textErased',
  'everythingExported',
  'clientExported',
  'accessRefused',
] as const;
export type AuditKind = (typeof auditKinds)[number];

/** How somebody signed in, as the entry's detail. */
export const signInWays = ['password', 'app', 'recoveryCode'] as const;
export type SignInWay = (typeof signInWays)[number];
