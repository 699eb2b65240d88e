import type { CodeTable } from '../values.ts';

/** Why the server refuses what concerns sites, chains, tickets, packets and people. */
export const recordCodes = {
  noSuchSite: {},
  noSuchChain: {},
  noSuchChainVersion: {},
  noSuchTicket: {},
  noSuchPacket: {},
  noSuchGrant: {},
  noSuchMember: {},
  noSuchFirmwareLevel: {},
  chainNotAtSite: {},
  chainLacksDevice: { deviceId: 'text' },
  chainLacksDisplay: { deviceId: 'text' },
  chainLacksPort: { portId: 'text' },
  chainLacksLink: { linkId: 'text' },
  granteeUnreachable: {},
  firmwareLevelExists: { model: 'name', minimum: 'name' },
  openTicketsAtChain: { numbers: 'count[]' },
  changeOpenElsewhere: { ticketNumber: 'count', change: 'changeKind' },
  ticketWithSomebody: { holder: 'name' },
  ticketWithNobody: {},
  assigneeInactive: { member: 'name' },
  assigneeNoTechnician: { member: 'name' },
  emailTaken: {},
  passwordWrong: {},
  otherAdminNeeded: {},
} as const satisfies CodeTable;
