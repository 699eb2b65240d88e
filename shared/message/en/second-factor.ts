import type { secondFactorCodes } from '../codes/second-factor.ts';
import type { Sentences } from '../sentences.ts';

const inMinutes = (minutes: number): string => (minutes === 1 ? 'a minute' : `${minutes} minutes`);

export const secondFactorEn: Sentences<typeof secondFactorCodes> = {
  secondFactorNeeded: () =>
    'The password is right. Send a code of the authenticator app, or one for recovery.',
  codeWrong: () => 'That code is not right, or was used already. Each is good once, and for about a minute.',
  codesDelayed: ({ minutes }) =>
    `Too many wrong codes: try again in ${inMinutes(minutes)}. A code for recovery is taken meanwhile.`,
  passwordDelayed: ({ minutes }) => `Too many wrong passwords: try again in ${inMinutes(minutes)}.`,
  secondStepOver: () => 'That took too long. Begin again with the password.',
  secondFactorWanted: () =>
    'Your organisation wants admins to show more than a password. Turn on an authenticator app in the settings.',
  secondFactorStays: () => 'Your organisation wants admins to keep it on.',
  appProposalOld: () => 'This key was offered too long ago, or to somebody else. Begin again.',
  appThereAlready: () => 'There is an app already. Turn that one off first.',
  noSecondFactor: () => 'No second factor is on.',
};
