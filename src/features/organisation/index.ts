export { firmwareLevels } from './firmware-levels.ts';
export { organisationRoutes } from './routes.ts';
export {
  hasHandle,
  insertOrganisation,
  readOrganisation,
  readSettings,
  takeTicketNumber,
} from './settings.ts';
