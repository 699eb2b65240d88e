import type { recordCodes } from '../codes/records.ts';
import type { Sentences } from '../sentences.ts';

export const recordsEn: Sentences<typeof recordCodes> = {
  noSuchSite: () => 'There is no such site.',
  noSuchChain: () => 'There is no such chain.',
  noSuchChainVersion: () => 'The chain has no such version.',
  noSuchTicket: () => 'There is no such ticket.',
  noSuchPacket: () => 'There is no such packet.',
  noSuchGrant: () => 'There is no such grant.',
  noSuchMember: () => 'There is no such member.',
  noSuchSession: () => 'There is no such sign-in of yours.',
  noSuchFirmwareLevel: () => 'There is no such firmware level.',
  chainNotAtSite: () => 'There is no such chain at that site.',
  chainLacksDevice: ({ deviceId }, say) => `The chain has no device ${say.text(deviceId)}.`,
  chainLacksDisplay: ({ deviceId }, say) => `The chain has no display ${say.text(deviceId)}.`,
  chainLacksPort: ({ portId }, say) => `That device has no port ${say.text(portId)}.`,
  chainLacksLink: ({ linkId }, say) => `The chain has no link ${say.text(linkId)}.`,
  granteeUnreachable: () => 'No support member of another organisation can be reached under that address.',
  firmwareLevelExists: ({ model, minimum }, say) =>
    `There is a level for ${say.name(model)} already: ${say.name(minimum)}. Change it.`,
  textHashed: () =>
    'That event was logged before texts could be erased: its text is part of what its hash is over.',
  noTextThere: () => 'There is no text of a person at that place of the log.',
  erasureForged: () => 'That a text was erased is not for anybody to write.',
  openTicketsAtChain: ({ numbers }, say) =>
    `Open at the same chain: ${say.and(numbers.map((number) => `no. ${number}`))}. If this is another fault, send the ids in seenDuplicates.`,
  changeOpenElsewhere: ({ ticketNumber, change }, say) =>
    `Ticket no. ${ticketNumber} has a change open on this chain: ${say.change(change)}. It has to be put back first.`,
  ticketWithSomebody: ({ holder }, say) => `This ticket is with ${say.name(holder)}. Take it over first.`,
  ticketWithNobody: () => 'This ticket is with nobody. Take it over first.',
  assigneeInactive: ({ member }, say) => `${say.name(member)} is not active any more.`,
  assigneeNoTechnician: ({ member }, say) => `${say.name(member)} is no technician.`,
  emailTaken: () => 'A member of this organisation has that email already.',
  passwordWrong: () => 'The current password is wrong.',
  passwordRepeats: () =>
    'One or two characters over and over are guessed first. Take something longer to say.',
  passwordMostUsed: () => 'This is one of the passwords that are used most, and tried first. Take another.',
  passwordIsName: () =>
    'Names of people and of the organisation are guessed first. Add something that nobody would connect with you.',
  otherAdminNeeded: () => 'Make somebody else admin first.',
};
