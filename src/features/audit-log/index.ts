export { auditLogRoutes } from './routes.ts';
