import type { MemberRole } from '../../shared/contract/primitives.ts';
import { adminScreens } from './admin/screens.ts';
import { dispatcherScreens } from './dispatcher/screens.ts';
import type { RoleScreens, ScreenRoute } from './roles.ts';
import { secondLineScreens } from './second-line/screens.ts';
import { technicianScreens } from './technician/screens.ts';

const all: readonly RoleScreens[] = [technicianScreens, dispatcherScreens, secondLineScreens, adminScreens];

/** The screens of a role; an admin has everybody's, and begins with their own. */
export const screensOf = (role: MemberRole): readonly RoleScreens[] => {
  const own = all.filter(({ roles }) => roles.includes(role));
  return own.toSorted((a, b) => Number(b.roles[0] === role) - Number(a.roles[0] === role));
};
export const homeOf = (role: MemberRole): string => screensOf(role)[0]?.home ?? '/app/settings';
export const routesOf = (role: MemberRole): readonly ScreenRoute[] =>
  screensOf(role).flatMap(({ routes }) => routes);
