// Plain values apart from the schemas, as in chain-names.ts: the phone loads this file and not the schema library.

/** The addresses of the API. The server registers its routes under them, the client asks them; `:id` stands for a part. */
export const addresses = {
  signIn: '/auth/sign-in',
  refresh: '/auth/refresh',
  signOut: '/auth/sign-out',
  secondStep: '/auth/second-step',
  newApp: '/auth/app/new',
  confirmApp: '/auth/app',
  newRecoveryCodes: '/auth/recovery-codes',
  me: '/me',
  ownPassword: '/me/password',
  ownSessions: '/me/sessions',
  endOwnSession: '/me/sessions/:id/end',
  ownSecondFactors: '/me/second-factors',
  endOwnApp: '/me/second-factors/app/end',
  endOtherSessions: '/me/sessions/end-others',
  members: '/members',
  member: '/members/:id',
  memberPassword: '/members/:id/password',
  endMemberFactors: '/members/:id/second-factors/end',

  organisation: '/organisation',
  usage: '/organisation/usage',
  auditLog: '/organisation/audit-log',
  faultModel: '/fault-model',
  firmwareLevels: '/firmware-levels',
  firmwareLevel: '/firmware-levels/:id',
  export: '/export',

  sites: '/sites',
  site: '/sites/:id',
  siteExport: '/sites/:id/export',
  siteChains: '/sites/:id/chains',
  chain: '/chains/:id',
  chainVersions: '/chains/:id/versions',
  chainVersion: '/chains/:id/versions/:version',
  changesSince: '/chains/:id/versions/:version/changes-since/:from',
  chainAudit: '/chains/:id/audit',
  chainBudget: '/chains/:id/budget',
  chainEdids: '/chains/:id/edids',

  tickets: '/tickets',
  ticket: '/tickets/:id',
  assignment: '/tickets/:id/assignment',
  takeOver: '/tickets/:id/take-over',
  commands: '/tickets/:id/commands',
  applicableChanges: '/tickets/:id/applicable-changes',
  plan: '/tickets/:id/plan',
  phonePlan: '/tickets/:id/phone-plan',
  timeline: '/tickets/:id/timeline',
  log: '/tickets/:id/log',
  logCheck: '/tickets/:id/log/check',
  erasures: '/tickets/:id/erasures',
  supportQueue: '/support-queue',
  pastCases: '/past-cases',

  ticketDiaries: '/tickets/:id/diaries',
  closeDiary: '/diaries/:id/close',
  /** A page for the client, written by the server; its first part is short, to be told over the phone. */
  diaryPage: '/d/:code',
  diaryEntry: '/d',

  ticketEvidence: '/tickets/:id/evidence',
  readings: '/tickets/:id/readings',
  logFindings: '/tickets/:id/log-findings',
  evidence: '/evidence/:id',
  evidenceContent: '/evidence/:id/content',
  evidenceThumbnail: '/evidence/:id/thumbnail',
  withdrawEvidence: '/evidence/:id/withdraw',
  uploads: '/uploads',
  upload: '/uploads/:id',

  ticketPackets: '/tickets/:id/packets',
  packet: '/packets/:id',
  packetSummary: '/packets/:id/summary',
  packetDownload: '/packets/:id/download',
  packetGrants: '/packets/:id/grants',
  revokeGrant: '/grants/:id/revoke',
  grantedPackets: '/granted-packets',
  signingKey: '/signing-key',

  events: '/events',
  problem: '/problems/:kind',
} as const;

type PartOf<Address extends string> = Address extends `${string}:${infer Part}/${infer Rest}`
  ? Part | PartOf<Rest>
  : Address extends `${string}:${infer Part}`
    ? Part
    : never;

/** An address with its parts filled in: `addressOf(addresses.ticket, { id })`. A part that is missing is a type error. */
export const addressOf = <Address extends string>(
  address: Address,
  parts: Readonly<Record<PartOf<Address>, string | number>>,
): string => address.replace(/:(\w+)/g, (_, part: PartOf<Address>) => String(parts[part]));
