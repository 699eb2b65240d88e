import type { Refused } from './problem.ts';

/** What a use case gives back: a body to send, or a refusal. */
export type Done<Body> = {
  readonly ok: true;
  readonly status: 200 | 201;
  readonly body: Body;
  readonly location?: string;
};
export type Outcome<Body> = Done<Body> | Refused;

export const found = <Body>(body: Body): Done<Body> => ({ ok: true, status: 200, body });
export const created = <Body>(body: Body, location: string): Done<Body> => ({
  ok: true,
  status: 201,
  body,
  location,
});
