import type { requestCodes } from '../codes/requests.ts';
import type { Sentences } from '../sentences.ts';

export const requestsEn: Sentences<typeof requestCodes> = {
  requestTooLarge: () => 'The request is larger than this address takes.',
  fileTooLargeForOneRequest: () =>
    'The file is too large for one request. Send it to /uploads, which can resume.',
  sendAsJson: () => 'Send application/json.',
  sendAsForm: () => 'Send multipart/form-data.',
  requestUnreadable: ({ reason }, say) => `The request cannot be read: ${say.text(reason)}`,
  formUnreadable: () => 'The form ends before it is whole, or is not multipart/form-data.',
  notHttp: () => 'This is not HTTP as the server reads it.',
  headersTooLarge: ({ limitKiB }) => `Address and headers together are larger than ${limitKiB} KiB.`,
  requestCameLate: () => 'The request did not arrive whole in time.',
  requestsTooMany: () => 'So many requests at once are too many. Wait a minute.',
  tryAgainSoon: () => 'Try again in a moment.',
  workTooLarge: () => 'This takes more memory than the server gives to one request.',
  quotaOpenUploads: ({ most }) =>
    `Your organisation has ${most} uploads under way, and no more are taken. Finish some, or give some up.`,
  quotaStoredBytes: ({ mostMB }) =>
    `Your organisation keeps as much evidence as this server takes of it, ${mostMB} MB. Whoever runs the server can let it keep more.`,
  quotaEventStreams: ({ most }) =>
    `Your organisation follows changes ${most} times at once. Close some screens.`,
  quotaRequests: ({ most }) => `Your organisation asks more than ${most} times a minute. Wait a minute.`,
  newerServerWrote: ({ found, known }) =>
    `A newer server wrote this: it is of version ${found}, and this server reads up to ${known}. Ask again once all servers are replaced.`,
  ticketUnreadable: () =>
    'What happened on this ticket cannot be read from its log. Whoever runs the server finds out why with npm run tickets:rebuild.',
  requestFailed: ({ request }) => `Quote request ${request} to whoever runs this server.`,
  clientNotBuilt: () =>
    'The client is not built here. Run: npm run build. The API is described at /reference.',
  nothingAtAddress: ({ path }, say) => `There is nothing at ${say.text(path)}.`,
  methodNotTaken: ({ path, taken, method }, say) =>
    `${say.text(path)} takes ${taken.join(', ')}, not ${method}.`,
  fieldsDoNotFit: () => 'Some fields do not fit. Each is listed under errors.',
  cursorForeign: () => 'That cursor is not from this list.',
  accessTokenNeeded: () => 'Send a valid access token as a bearer token.',
  accountInactive: () => 'This account is not active any more.',
  roleNotAllowed: ({ role, allowed }, say) =>
    `This is for: ${say.and(allowed.map((one) => say.term('memberRole', one)))}. You are signed in as ${say.term('memberRole', role)}.`,
  signInRefused: ({ tries, lockedMin }) =>
    `Organisation, email or password is wrong, or the account is locked for ${lockedMin} minutes after ${tries} wrong tries.`,
  signInWrong: () => 'Organisation, email or password is wrong.',
  signInDelayed: ({ minutes }) =>
    `Too many wrong tries from here: try again in ${minutes === 1 ? 'a minute' : `${minutes} minutes`}. From elsewhere, and on other devices, nothing has changed.`,
  signInAgain: () => 'Sign in again.',
  idempotencyKeyNeeded: () =>
    'Send an Idempotency-Key of 8 to 200 visible characters, a new one for each thing you mean to do; on a retry send the same one.',
  idempotencyKeyReused: () => 'This key was sent with another request before. Use a new one.',
  versionNeeded: () => 'Send If-Match with the ETag of the version this update is based on.',
  versionOutdated: () => 'Somebody changed it since you read it. Read it again and repeat the update.',
  likeOneAlready: () => 'There is one like it already.',
  referenceMissing: () => 'Something that this refers to does not exist.',
  noSuchProblemKind: () => 'There is no such problem.',
};
