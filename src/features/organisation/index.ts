export { firmwareLevels } from './firmware-levels.ts';
export { organisationRoutes } from './routes.ts';
export {
  hasHandle,
  insertOrganisation,
  readFaultTable,
  readOrganisation,
  readSettings,
  takeTicketNumber,
} from './settings.ts';
