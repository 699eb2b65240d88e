export { access, type Permission } from './access.ts';
export type { Actor } from './actor.ts';
export type { AccessClaims } from './authentication.ts';
export type { Context } from './context.ts';
export { decodeCursor, literalLike, pageFrom } from './cursor.ts';
export { etagOf, isUnchanged, mismatch } from './etag.ts';
export { created, type Done, found, type Outcome } from './outcome.ts';
export { type ProblemFacts, problemOf, type Refused, refused, sendProblem } from './problem.ts';
export { type Update, updateIn } from './update.ts';
