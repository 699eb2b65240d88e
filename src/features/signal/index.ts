export { edidsRead } from './edid-readings.ts';
export { signalRoutes } from './routes.ts';
