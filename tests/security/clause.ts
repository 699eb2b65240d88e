/** A test by its file and the words that it is called. */
export type NamedTest = readonly [file: string, title: string];

/** What a catalogue asks for, and where we stand. */
export type Clause = {
  /** As the catalogue numbers it. */
  readonly clause: string;
  readonly how: string;
  /** What shows it; none only where `open` says what is missing. */
  readonly tests: readonly NamedTest[];
  /** What of it is not met, or lies with whoever runs the server. */
  readonly open?: string;
};

const people = 'tests/features/people/';
const [signIn, factor] = [`${people}sign-in.test.ts`, `${people}second-factor.test.ts`];
const [wall, rights] = ['tests/database/wall.test.ts', 'tests/database/least-privilege.test.ts'];
const [content, uploads] = [
  'tests/features/evidence/content.test.ts',
  'tests/features/evidence/uploads.test.ts',
];

/** Tests that several rows name. */
export const shown = {
  noOtherTenant: [
    'tests/http/tenant-wall.test.ts',
    '%s tells nobody of another organisation that an id exists',
  ],
  rolesOnly: ['tests/http/tenant-wall.test.ts', '%s is for those roles only'],
  signInNeeded: ['tests/http/tenant-wall.test.ts', '%s needs a sign-in'],
  rowsOfOwn: [wall, "shows a request no row of another's in any table"],
  columnsOfOwn: [rights, 'reads what sign-in and grants need, across organisations, and no other column'],
  roleNow: [`${people}members.test.ts`, 'act by the role they have now, not by the one in their token'],
  wait: [signIn, 'has to wait longer and longer from one address; the owner gets in from elsewhere'],
  noOracle: [signIn, 'waits alike for accounts that do not exist, and for organisations'],
  family: [signIn, 'rotates refresh tokens; the use of an old one ends the whole family'],
  unsigned: [signIn, 'refuses requests without a token, with a broken one, and with an unsigned one'],
  otherSecret: [
    signIn,
    'signs from the next start on, and what the one before signed is taken until it is dropped',
  ],
  newPassword: [signIn, "end with a new password: one's own change keeps the caller, another's keeps none"],
  signedOut: [signIn, 'end with signing out, access token and all'],
  proxies: [
    'tests/config.test.ts',
    'trusts proxies by their number or addresses, never whoever sends the header',
  ],
  secondFactor: [factor, 'is asked for after the password from when a first code of the app was right'],
  oncePerCode: [factor, 'takes a code once, in whatever sign-in, also when it comes many times at once'],
  codesNotGuessed: [
    factor,
    'is not guessed by whoever knows the password, and its owner gets in by a code for recovery meanwhile',
  ],
  passwordAgain: [factor, 'is changed by the password only, whose tries are counted too'],
  sealed: [
    factor,
    'opens for the same purpose under the same key only, and never when a bit of it is changed',
  ],
  adminsNeed: [
    factor,
    'is wanted of admins where the organisation says so: before that they see to it, and do nothing else',
  ],
  attachment: [content, 'comes as an attachment that no browser takes for a page'],
  damaged: [
    content,
    'is not handed out as genuine when it was damaged or lost, and sending it again heals it',
  ],
  announced: [uploads, 'never takes more than was announced'],
  noForeignPage: [uploads, 'says what it can do, and lets no page of elsewhere in'],
  described: ['tests/security/fuzz.test.ts', 'answers every route with a described success'],
  fuzzed: ['tests/security/fuzz.test.ts', 'takes ${'],
  framework: ['tests/security/framework-refusals.test.ts', 'is a problem document: %s'],
  noPrototype: ['tests/http/habits.test.ts', 'lets in no key that would change what an object is'],
  inTurn: [
    'tests/heavy-work/fair-queue.test.ts',
    'lets organisations have turns, and members within them, whoever asked for more and earlier',
  ],
  loopFree: ['tests/heavy-work/worker-threads.test.ts', 'plans a large chain, and answers others meanwhile'],
} as const satisfies Record<string, NamedTest>;
