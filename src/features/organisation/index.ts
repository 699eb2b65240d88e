export { firmwareLevels } from './firmware-levels.ts';
export { organisationRoutes } from './routes.ts';
export {
  insertOrganisation,
  readOrganisation,
  readSettings,
  takeTicketNumber,
} from './settings.ts';
