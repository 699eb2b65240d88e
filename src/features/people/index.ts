export { memberRoutes } from './member-routes.ts';
export { type NewOrganisation, provisionOrganisation } from './provision.ts';
export { signInRoutes } from './sign-in-routes.ts';
