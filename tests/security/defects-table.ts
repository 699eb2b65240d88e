import { type NamedTest, shown } from './clause.ts';

/** What was found at the edge once, each with the test that would find it again. */
export const defects: readonly { readonly defect: string; readonly tests: readonly NamedTest[] }[] = [
  {
    defect: 'a forged X-Forwarded-For voids every limit',
    tests: [
      shown.proxies,
      ['tests/security/defects.test.ts', 'a forged X-Forwarded-For changes nobody’s address'],
    ],
  },
  { defect: 'anybody locks anybody out', tests: [shown.wait] },
  { defect: 'a few plans silence the server', tests: [shown.loopFree] },
  {
    defect: 'a damaged file goes out as genuine',
    tests: [
      shown.damaged,
      [
        'tests/features/packets/packets.test.ts',
        'name what was damaged or lost since, never pass it off as whole, and heal',
      ],
    ],
  },
  {
    defect: 'a sign-in takes longer where the account exists',
    tests: [['tests/security/defects.test.ts', 'a sign-in is the same work whether the account exists']],
  },
  {
    defect: 'a password of one character again and again',
    tests: [['tests/features/people/password-rules.test.ts', 'is refused as %s: %s']],
  },
  { defect: 'tokens outlive sign-out and a new password', tests: [shown.signedOut, shown.newPassword] },
  {
    defect: 'a phone whose refresh answer was lost is signed out',
    tests: [
      [
        'tests/features/people/sign-in.test.ts',
        'takes a refresh token again as long as nothing shows that its reply arrived',
      ],
    ],
  },
  { defect: 'an error of the framework is no problem document', tests: [shown.framework] },
  { defect: 'successes are missing in the description', tests: [shown.described] },
  {
    defect: 'an upload loses its bytes by a refusal',
    tests: [
      [
        'tests/features/evidence/uploads.test.ts',
        'is refused at its end when it is not what it was said to be, and stays until its sender gives it up',
      ],
    ],
  },
];
