export { type LogEvents, logEventsOf, logFindingsOf } from './read-findings.ts';
export { logFindingsRoutes } from './routes.ts';
