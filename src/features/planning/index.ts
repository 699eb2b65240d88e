export { planningRoutes } from './routes.ts';
export { suspectsOn } from './suspects.ts';
