export { firmwareLevels } from './firmware-levels.ts';
export { organisationRoutes } from './routes.ts';
export { readSettings } from './settings.ts';
