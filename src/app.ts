import type { FastifyInstance } from 'fastify';
import type { Logger } from 'pino';
import { auditLogRoutes } from './features/audit-log/index.ts';
import { chainRoutes } from './features/chains/index.ts';
import { clientFiles } from './features/client/index.ts';
import { diaryRoutes } from './features/diary/index.ts';
import { evidenceRoutes } from './features/evidence/index.ts';
import { exportRoutes } from './features/export/index.ts';
import { healthRoutes } from './features/health/index.ts';
import { liveRoutes } from './features/live/index.ts';
import { logFindingsRoutes } from './features/log-findings/index.ts';
import { organisationRoutes } from './features/organisation/index.ts';
import { packetRoutes } from './features/packets/index.ts';
import { memberRoutes, secondFactorRoutes, signInRoutes } from './features/people/index.ts';
import { planningRoutes } from './features/planning/index.ts';
import { referenceRoutes } from './features/reference/index.ts';
import { signalRoutes } from './features/signal/index.ts';
import { siteRoutes } from './features/sites/index.ts';
import { ticketRoutes } from './features/tickets/index.ts';
import { createServer } from './http/server.ts';
import type { Metrics } from './metrics.ts';
import type { Services } from './services.ts';

/** The whole application, ready to listen or to be injected into. */
export async function createApp(
  services: Services,
  logger: Logger,
  metrics: Metrics | null = null,
): Promise<FastifyInstance> {
  const app = await createServer(services, logger);
  metrics?.follow(app);
  await app.register(healthRoutes, { services });
  await app.register(signInRoutes, { services });
  await app.register(secondFactorRoutes, { services });
  await app.register(memberRoutes, { services });
  await app.register(organisationRoutes, { services });
  await app.register(auditLogRoutes, { services });
  await app.register(siteRoutes, { services });
  await app.register(chainRoutes, { services });
  await app.register(signalRoutes, { services });
  await app.register(ticketRoutes, { services });
  await app.register(diaryRoutes, { services });
  await app.register(evidenceRoutes, { services });
  await app.register(logFindingsRoutes, { services });
  await app.register(planningRoutes, { services });
  await app.register(packetRoutes, { services });
  await app.register(exportRoutes, { services });
  await app.register(liveRoutes, { services });
  await app.register(referenceRoutes);
  await app.register(clientFiles, { services });
  await app.ready();
  return app;
}
