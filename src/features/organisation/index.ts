export { everyOrganisation, type OrganisationRef } from './every-organisation.ts';
export { firmwareLevels } from './firmware-levels.ts';
export { organisationRoutes } from './routes.ts';
export {
  figuresForChanges,
  hasHandle,
  insertOrganisation,
  keptAuditLogDays,
  organisationNow,
  readFaultTable,
  readOrganisation,
  readSettings,
  takeTicketNumber,
} from './settings.ts';
