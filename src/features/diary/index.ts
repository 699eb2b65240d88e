export { diaryRoutes } from './routes.ts';
