export { type LogEvents, logEventsOf, logFindingsOf, logsOf } from './read-findings.ts';
export { logFindingsRoutes } from './routes.ts';
