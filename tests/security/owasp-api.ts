import { type Clause, shown } from './clause.ts';

/** OWASP API Security Top 10, edition of 2023, in our own words. */
export const apiRisks: readonly Clause[] = [
  {
    clause: 'API1:2023',
    how: 'Every row is walled by organisation in the database; an id of another is answered as one that is not there.',
    tests: [shown.noOtherTenant, shown.rowsOfOwn],
  },
  {
    clause: 'API2:2023',
    how: 'Waits by address and account, tokens that end with their session, a second factor whose codes are good once.',
    tests: [
      shown.wait,
      shown.noOracle,
      shown.family,
      shown.unsigned,
      shown.secondFactor,
      shown.codesNotGuessed,
    ],
    open: 'Passkeys are missing.',
  },
  {
    clause: 'API3:2023',
    how: 'Bodies are read by a schema per route, replies written by one; the database grants columns, not tables.',
    tests: [shown.described, shown.columnsOfOwn],
  },
  {
    clause: 'API4:2023',
    how: 'Bodies, headers, uploads and requests a minute are limited; what costs much runs in fair queues.',
    tests: [
      shown.inTurn,
      shown.loopFree,
      shown.announced,
      ['tests/http/habits.test.ts', 'larger than the limit is a problem'],
    ],
  },
  {
    clause: 'API5:2023',
    how: 'One table of permissions; a route that names none stops the start; roles are those of now.',
    tests: [shown.rolesOnly, shown.roleNow, shown.signInNeeded],
  },
  {
    clause: 'API6:2023',
    how: 'What strangers may begin is little: signing in waits, and a diary takes no more than a client can mean.',
    tests: [
      ['tests/features/diary/diary.test.ts', 'takes no more than somebody can mean in an hour'],
      shown.wait,
    ],
  },
  {
    clause: 'API7:2023',
    how: 'The server fetches nothing that a request names; fuzzed texts in every field end in no request of its own.',
    tests: [shown.fuzzed],
    open: 'That nothing is fetched is seen in the code, not measured.',
  },
  {
    clause: 'API8:2023',
    how: 'Policy headers on pages and files, problems without insides, settings refused by name, proxies by count only.',
    tests: [
      shown.framework,
      shown.attachment,
      shown.proxies,
      ['tests/config.test.ts', 'names the variable that it cannot use'],
    ],
  },
  {
    clause: 'API9:2023',
    how: 'All routes are in one description, and in the table of the tests; neither can lack one.',
    tests: [shown.described, ['tests/http/tenant-wall.test.ts', 'is in the table']],
  },
  {
    clause: 'API10:2023',
    how: 'No other API is asked. Files are what strangers send: read by their content, kept by hash, damaged ones named.',
    tests: [
      shown.damaged,
      [
        'tests/features/evidence/evidence.test.ts',
        'is refused when its content is not what it is said to be',
      ],
    ],
  },
];
