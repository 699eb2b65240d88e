import { type ProblemKind, problemStatuses } from '../../contract/problem-kinds.ts';

type TitleCodes = { readonly [Kind in ProblemKind as `problems/${Kind}`]: Record<never, never> };

/** The titles of problems (RFC 9457), one a kind; the code is the problem's `type` without its first slash. */
export const problemTitleCodes = Object.fromEntries(
  Object.keys(problemStatuses).map((kind) => [`problems/${kind}`, {}]),
) as TitleCodes;
