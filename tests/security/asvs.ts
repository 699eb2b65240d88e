import { type Clause, shown } from './clause.ts';

const members = 'tests/features/people/members.test.ts';
const auditLog = 'tests/features/audit-log/audit-log.test.ts';
const rules = 'tests/features/people/password-rules.test.ts';
const habits = 'tests/http/habits.test.ts';
const evidence = 'tests/features/evidence/evidence.test.ts';

/**
 * OWASP ASVS 5.0, levels 1 and 2, in our own words; numbers by its text of shortly before the release, those of V6.3 as
 * released, from memory. Chapters that have nothing to hold on to here are left out: V10 (no OAuth), V17 (no WebRTC), and
 * sections on XML, LDAP, GraphQL, WebSocket, SMS and cookies, none of which there are.
 */
export const asvs: readonly Clause[] = [
  {
    clause: 'V1.2.4',
    how: 'Statements have parameters; what is looked for is taken literally.',
    tests: [[habits, 'in a search is taken literally'], shown.fuzzed],
  },
  {
    clause: 'V1.2.1, V1.2.3, V3.2.2',
    how: 'Pages that the server writes go through one template that escapes; the client makes text nodes.',
    tests: [['tests/features/packets/packets.test.ts', 'show a summary that runs nothing']],
  },
  {
    clause: 'V1.5.2, V15.3.6',
    how: 'JSON is read without keys that change what an object is, and no deeper than any walk goes.',
    tests: [shown.noPrototype],
  },
  {
    clause: 'V2.2.1, V2.2.2, V15.3.3, V15.3.5',
    how: 'The contract’s schemas read every body, address and query on the server.',
    tests: [[habits, 'is answered field by field'], shown.fuzzed],
  },
  {
    clause: 'V2.3.3',
    how: 'A request is one transaction; a refusal undoes it.',
    tests: [['tests/database/transactions.test.ts', 'undo what work did when it throws']],
  },
  {
    clause: 'V2.3.4',
    how: 'Locks, keys and partial indexes: of two at once one is first.',
    tests: [[members, 'are changed by one of two requests that come at once, and the other is told so']],
  },
  {
    clause: 'V2.4.1, V15.2.2',
    how: 'Limits by address, queues that are fair by organisation and member, work off the event loop.',
    tests: [shown.inTurn, shown.loopFree],
  },
  {
    clause: 'V3.2.1, V5.4.1, V5.4.2',
    how: 'Files of users come as attachments, sandboxed, under a name that we made.',
    tests: [shown.attachment],
  },
  {
    clause: 'V3.4.1',
    how: 'Strict-Transport-Security where a proxy is trusted.',
    tests: [],
    open: 'No test; without a proxy the server speaks plain HTTP.',
  },
  {
    clause: 'V3.4.3, V3.4.6',
    how: 'One Content-Security-Policy: own scripts, no frames, no base.',
    tests: [
      ['tests/browser/frame.test.ts', 'breaks no rule of its Content-Security-Policy'],
      shown.framework,
    ],
  },
  {
    clause: 'V3.4.2, V3.5.1, V3.5.2',
    how: 'A token in a header, which no page of elsewhere can send, and no cross-origin answers.',
    tests: [shown.noForeignPage, shown.unsigned],
  },
  {
    clause: 'V4.1.1',
    how: 'Each reply has the type that is described for it.',
    tests: [shown.described, shown.fuzzed],
  },
  {
    clause: 'V4.1.3, V15.3.4',
    how: 'X-Forwarded-For counts as far as trusted proxies wrote it.',
    tests: [
      shown.proxies,
      ['tests/security/defects.test.ts', 'a forged X-Forwarded-For changes nobody’s address'],
    ],
  },
  {
    clause: 'V4.2.1',
    how: 'Node’s strict parser; what it refuses is answered as a problem, and the connection ends.',
    tests: [['tests/security/framework-refusals.test.ts', 'ends a connection whose message has two lengths']],
  },
  { clause: 'V5.2.1', how: 'Sizes are limited by route and upload.', tests: [shown.announced] },
  {
    clause: 'V5.2.2',
    how: 'A file is what its bytes say, not its name.',
    tests: [[evidence, 'is refused when its content is not what it is said to be']],
  },
  {
    clause: 'V5.3.2',
    how: 'Files lie under their hash; a name is shown and never a path.',
    tests: [[evidence, 'is kept once for the same content'], shown.fuzzed],
  },
  {
    clause: 'V5.4.3',
    how: 'None.',
    tests: [],
    open: 'Files are not looked through for malware; they never run here.',
  },
  {
    clause: 'V6.2.1, V6.2.4, V6.2.5, V6.2.11',
    how: 'Ten characters or more of any kind, none of those used most, none of the names around.',
    tests: [
      [members, 'get no password that is guessed first, from themselves or an admin, and are told where'],
      [rules, 'is refused as %s: %s'],
    ],
  },
  {
    clause: 'V6.2.2, V6.2.3',
    how: 'Changed by its owner with the one until now.',
    tests: [[members, 'change their own password with the current one, which ends their other sign-ins']],
  },
  {
    clause: 'V6.3.1, V6.1.1',
    how: 'Waits that double, for an address and an account; none is locked.',
    tests: [shown.wait],
  },
  {
    clause: 'V6.3.3',
    how: 'An authenticator app for everybody who wants it, and for all admins where the organisation says so.',
    tests: [shown.secondFactor, shown.adminsNeed],
    open: 'Level 2 wants it of everybody; here the organisation decides, and only of admins.',
  },
  {
    clause: 'V6.3.4',
    how: 'Password and second factor are asked at one place; recovery is on the command line.',
    tests: [shown.codesNotGuessed],
  },
  {
    clause: 'V6.4.1, V6.4.3, V6.4.4',
    how: 'An admin, or whoever runs the server, gives a password or takes a lost factor; all sign-ins end.',
    tests: [
      [
        'tests/features/people/recover.test.ts',
        'gives them another password, makes them active and an admin, and ends their sign-ins',
      ],
    ],
    open: 'Nobody has to change a password that an admin set for them.',
  },
  { clause: 'V6.5.1', how: 'A code is good once.', tests: [shown.oncePerCode] },
  {
    clause: 'V6.5.2, V6.5.3, V6.5.4',
    how: 'Codes for recovery have 120 random bits and lie as digests; keys of apps have 160, sealed.',
    tests: [
      [
        'tests/features/people/second-factor.test.ts',
        'leaves no secret in the database in plain, nor in what writes are answered with again',
      ],
    ],
  },
  {
    clause: 'V6.5.5',
    how: 'A code is taken in its half minute and one to each side.',
    tests: [
      [
        'tests/features/people/second-factor.test.ts',
        'are taken one step early and one late, and no further',
      ],
    ],
    open: 'Half a minute more on each side than asked, for clocks that differ (RFC 6238, section 5.2).',
  },
  {
    clause: 'V7.2.1, V7.4.1',
    how: 'Each request asks whether the session goes on.',
    tests: [shown.signedOut],
  },
  {
    clause: 'V7.2.3, V7.2.4',
    how: 'Refresh tokens of 256 random bits, each used once, kept as digests.',
    tests: [shown.family],
  },
  {
    clause: 'V7.3.1',
    how: 'A session that is not used runs out.',
    tests: [['tests/features/people/sign-in.test.ts', 'refuses a refresh token after its time']],
  },
  { clause: 'V7.3.2', how: 'None.', tests: [], open: 'A session that is used goes on without end.' },
  {
    clause: 'V7.4.2',
    how: 'Made inactive, a member is out at once.',
    tests: [[members, 'lose every way in at once when they are made inactive']],
  },
  { clause: 'V7.4.3', how: 'A new password ends all other sign-ins.', tests: [shown.newPassword] },
  { clause: 'V7.4.5', how: 'By a new password or by taking the second factor.', tests: [shown.newPassword] },
  { clause: 'V7.5.1', how: 'The password once more, with its tries counted.', tests: [shown.passwordAgain] },
  {
    clause: 'V7.5.2',
    how: 'Sign-ins are listed and ended one by one or all.',
    tests: [
      [
        'tests/features/people/sign-in.test.ts',
        'are listed with the one that asks first, and end one by one, at once and with all their tokens',
      ],
    ],
    open: 'Without the password once more.',
  },
  { clause: 'V8.2.1, V8.3.1', how: 'Permissions by role, on the server.', tests: [shown.rolesOnly] },
  { clause: 'V8.2.2', how: 'Ids of others are not there.', tests: [shown.noOtherTenant] },
  { clause: 'V8.2.3', how: 'Columns are granted one by one.', tests: [shown.columnsOfOwn] },
  { clause: 'V8.4.1', how: 'Row-level security, forced.', tests: [shown.rowsOfOwn] },
  {
    clause: 'V9.1.1, V9.1.2, V9.1.3',
    how: 'HS256 with our secrets and nothing else.',
    tests: [shown.unsigned, shown.otherSecret],
  },
  {
    clause: 'V9.2.1, V9.2.2, V9.2.3',
    how: 'Time, issuer and audience are checked; a refresh token opens nothing.',
    tests: [shown.unsigned, ['tests/features/live/live.test.ts', 'ends when the token does']],
  },
  { clause: 'V11.3.2, V11.3.3', how: 'AES-256-GCM.', tests: [shown.sealed] },
  {
    clause: 'V11.4.2',
    how: 'Argon2id by the parameters of OWASP’s cheat sheet, in turns.',
    tests: [
      [
        'tests/features/people/sign-in.test.ts',
        'is counted before passwords are compared, however many come at once',
      ],
    ],
  },
  {
    clause: 'V13.2.2',
    how: 'Requests run as roles that own nothing.',
    tests: [
      [
        'tests/database/wall.test.ts',
        'has no way round it: roles without bypass, rights of others, or tables of their own',
      ],
    ],
  },
  {
    clause: 'V13.3.1, V13.3.2',
    how: 'Secrets lie in the data folder, readable by its owner, or are given.',
    tests: [
      [
        'tests/config.test.ts',
        'makes a token secret on first start, keeps it, and lets only its owner read it',
      ],
    ],
    open: 'In no vault.',
  },
  {
    clause: 'V13.4.4, V13.4.3',
    how: 'No TRACE, no listings.',
    tests: [shown.framework],
  },
  {
    clause: 'V14.2.1',
    how: 'Tokens in headers and bodies; a diary’s code, which is in its address, is in no log.',
    tests: [
      ['tests/features/diary/diary.test.ts', 'is opened with a code that no table and no kept reply holds'],
    ],
  },
  {
    clause: 'V14.3.1',
    how: 'Signing out takes everything off the device.',
    tests: [['tests/browser/frame.test.ts', 'signs out, and leaves nothing of the member on the device']],
  },
  {
    clause: 'V15.1.2',
    how: 'The lock file names every package with its digest.',
    tests: [
      [
        'tests/packages.test.ts',
        'come from whichever registry an installation uses, and are checked by their digest',
      ],
    ],
  },
  {
    clause: 'V16.2.1, V16.2.5',
    how: 'The audit log says who, what, to whom and when by ids, and holds no word of a person and no secret.',
    tests: [
      [
        auditLog,
        'tells what an admin did to a member, once however often it is sent, and no word of any person',
      ],
    ],
  },
  {
    clause: 'V16.3.1',
    how: 'The audit log tells of sign-ins, refused ones, and what members change about how they sign in.',
    tests: [[auditLog, 'tells who signed in and out, and whose sign-in was refused, once a minute']],
    open: 'Alike refusals within a minute are one entry; tries that have to wait are in the server’s log only.',
  },
  {
    clause: 'V16.3.2',
    how: 'It tells who asked for what their role may not have.',
    tests: [
      [auditLog, 'tells that a token was in two hands, and who asked for what their role may not have'],
    ],
  },
  {
    clause: 'V16.4.2',
    how: 'Requests add to it, change nothing, and can take away only what is 90 days old.',
    tests: [
      [
        'tests/database/least-privilege.test.ts',
        'adds to the audit log, changes nothing of it, and takes away what is 90 days old',
      ],
      [auditLog, 'forgets entries after as many days as the organisation says'],
    ],
  },
  { clause: 'V16.5.1', how: 'A 5xx names a request, and nothing of the inside.', tests: [shown.framework] },
];
