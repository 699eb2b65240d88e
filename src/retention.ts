import type { Logger } from 'pino';
import { type BackgroundJob, repeatedly } from './background-job.ts';
import type { TenantTransaction } from './database/index.ts';
import { everyOrganisation, keptAuditLogDays } from './features/organisation/index.ts';
import { forgetExpiredTokens } from './features/people/index.ts';
import { forgetActs } from './http/audit-log.ts';
import { forgetReplies } from './http/forget-replies.ts';
import type { Services } from './services.ts';

type Keeping = Pick<Services, 'config' | 'database' | 'now'>;

/** Assumed: what is past its time grows slowly, and nobody waits for it to go. */
const everyMs = 6 * 3600 * 1000;
const dayMs = 86_400_000;

/**
 * Takes away, now and every six hours, what nobody can ask for any more: kept replies and entries of the audit log past
 * their days, and expired refresh tokens. Several servers may do it at a time: what one has taken away, the other does not
 * find.
 */
export const keepRetention = (services: Keeping, logger: Logger): BackgroundJob =>
  repeatedly((isStopping) => forgetOld(services, isStopping), {
    everyMs,
    onError: (error) => logger.error({ err: error }, 'what is past its time could not all be removed'),
  });

/** A batch a transaction, so that requests come in between. */
export async function forgetOld(
  { config, database, now }: Keeping,
  isStopping: () => boolean = () => false,
): Promise<void> {
  const daysAgo = (days: number): Date => new Date(now().getTime() - days * dayMs);
  const jobs: ((tx: TenantTransaction, orgId: string) => Promise<boolean>)[] = [
    (tx, orgId) => forgetReplies(tx, orgId, daysAgo(config.keepRepliesDays)),
    (tx, orgId) => forgetExpiredTokens(tx, orgId, now()),
    async (tx, orgId) => forgetActs(tx, orgId, daysAgo(await keptAuditLogDays(tx, orgId))),
  ];
  for (const { orgId } of await everyOrganisation(database)) {
    for (const job of jobs) {
      let more = true;
      while (more && !isStopping())
        more = await database.inTenant({ orgId, memberId: null }, (tx) => job(tx, orgId));
    }
  }
}
