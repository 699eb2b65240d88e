export { memberRoutes } from './member-routes.ts';
export { listMembers, readMember } from './members.ts';
export { type NewOrganisation, provisionOrganisation } from './provision.ts';
export { randomPassword, recoverMember } from './recover.ts';
export { forgetExpiredTokens } from './refresh-tokens.ts';
export { secondFactorRoutes } from './second-factor-routes.ts';
export { signInRoutes } from './sign-in-routes.ts';
