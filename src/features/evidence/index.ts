export { evidenceRoutes } from './routes.ts';
