import type { MemberRole } from '../../shared/contract/primitives.ts';

/** Who acts in a transaction, as the database knows them now (a token may be older than their last change of role). */
export type Actor = {
  readonly orgId: string;
  readonly memberId: string;
  readonly role: MemberRole;
  readonly name: string;
  /** The sign-in that the request's token came of; null where nobody signed in, as with a client's diary. */
  readonly sessionId: string | null;
  /** An admin without the second factor that the organisation wants of them: they may see to it, and nothing else. */
  readonly lacksSecondFactor: boolean;
};
