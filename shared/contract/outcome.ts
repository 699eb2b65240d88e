import { z } from 'zod';
import { verdict } from './change.ts';
import { auditFinding, side } from './triage.ts';

/**
 * What somebody was shown of an outcome when they sent the command: a phone decides by what it knows, and without a
 * connection that is provisional. Sent with the command, it is not overruled unseen.
 */
export const shownVerdict = z.object({ verdict });
export const shownSide = z.object({ side });
export const shownFindings = z.object({ findings: z.array(auditFinding).max(500) });

const apart = <Of extends string, Shown extends z.ZodType>(of: Of, shown: Shown) =>
  z.object({ of: z.literal(of), shown, decided: shown });
/** An outcome as it was shown, and as it was decided now. */
export const outcomesApart = z.discriminatedUnion('of', [
  apart('judgeRetest', shownVerdict),
  apart('concludeSide', shownSide),
  apart('reviewAudit', shownFindings),
]);
export type OutcomesApart = z.infer<typeof outcomesApart>;
