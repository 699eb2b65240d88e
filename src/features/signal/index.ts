export { readEdids } from './edid-readings.ts';
export { signalRoutes } from './routes.ts';
