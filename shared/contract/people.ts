import { z } from 'zod';
import { shortest } from './limits.ts';
import { id, instant, line, memberRole } from './primitives.ts';

export const email = z.email().max(200).toLowerCase();
export const newPassword = z.string().min(shortest.password).max(200);

export const signIn = z.object({
  organisation: z.string().max(60),
  email: z.string().max(200),
  password: z.string().max(200),
});
export const member = z.object({
  id,
  name: line,
  email,
  role: memberRole,
  active: z.boolean(),
  version: z.int(),
});
export type Member = z.infer<typeof member>;
/** The organisation that somebody is signed in to. */
const ownOrganisation = z.object({ id, handle: z.string(), name: z.string() });
export const tokens = z.object({
  accessToken: z.string(),
  expiresInS: z.int(),
  refreshToken: z.string(),
  member,
  organisation: ownOrganisation,
});
export type Tokens = z.infer<typeof tokens>;
export const refresh = z.object({ refreshToken: z.string().min(20).max(500) });
export const me = z.object({
  member,
  organisation: ownOrganisation,
  /** What a packet is granted to; tell it to the organisation that wants to show you a case. */
  memberAddress: id,
});
export type Me = z.infer<typeof me>;
/** What a sign-in goes on with whose password was right, where something has to be shown beside it. */
export const secondStep = z.object({ token: z.string() });
export type SecondStep = z.infer<typeof secondStep>;
/** Six digits of an app, or a code for recovery, with or without what is typed between its groups. */
const code = z.string().trim().min(6).max(60);
export const secondStepTaken = z.object({ token: z.string().min(20).max(500), code });
/** What I show beside my password; `isRequired` where the organisation wants it of me. */
export const secondFactors = z.object({
  app: z.object({ addedAt: instant, usedAt: instant }).nullable(),
  recoveryCodesLeft: z.int(),
  isRequired: z.boolean(),
});
export type SecondFactors = z.infer<typeof secondFactors>;
/** A key for an app in Base32, the same as the text of the code that the app's camera reads, and what confirms it. */
export const newApp = z.object({ key: z.string(), uri: z.string(), proposal: z.string() });
export type NewApp = z.infer<typeof newApp>;
export const appConfirmed = z.object({
  password: z.string().max(200),
  proposal: z.string().max(1000),
  code,
});
export const passwordAgain = z.object({ password: z.string().max(200) });
export const recoveryCodes = z.object({ recoveryCodes: z.array(z.string()) });
export type RecoveryCodes = z.infer<typeof recoveryCodes>;
/** One of my sign-ins that can still be gone on with. */
export const session = z.object({
  id,
  /** What the browser says that it is; null where that is not known. */
  device: z.string().nullable(),
  startedAt: instant,
  /** When it last asked for new tokens, which it does every quarter of an hour that it is used. */
  seenAt: instant,
  /** The one that asks. */
  isThis: z.boolean(),
});
export type Session = z.infer<typeof session>;

export const newMember = z.object({ name: line, email, role: memberRole, password: newPassword });
export const memberUpdate = z.object({ name: line, role: memberRole, active: z.boolean() });
export const passwordReset = z.object({ password: newPassword });
export const passwordChange = z.object({ current: z.string().max(200), password: newPassword });
