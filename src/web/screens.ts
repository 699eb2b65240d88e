import type { MemberRole } from '../../shared/contract/primitives.ts';
import { adminScreens } from './admin/screens.ts';
import { dispatcherScreens } from './dispatcher/screens.ts';
import type { MenuEntry, RoleScreens, ScreenRoute } from './routing/role-screens.ts';
import { secondLineScreens } from './second-line/screens.ts';
import { technicianScreens } from './technician/screens.ts';

const all: readonly RoleScreens[] = [technicianScreens, dispatcherScreens, secondLineScreens, adminScreens];

/** The screens of a role; an admin has everybody's, and begins with their own. */
const screensOf = (role: MemberRole): readonly RoleScreens[] => {
  const own = all.filter(({ roles }) => roles.includes(role));
  return own.toSorted((a, b) => Number(b.roles[0] === role) - Number(a.roles[0] === role));
};
export const homeOf = (role: MemberRole): string => screensOf(role)[0]?.home ?? '/app/settings';
export const menuOf = (role: MemberRole): readonly MenuEntry[] => screensOf(role).flatMap(({ menu }) => menu);
export const routesOf = (role: MemberRole): readonly ScreenRoute[] =>
  screensOf(role).flatMap(({ routes }) => routes);

/**
 * Loads the screens of a role's own work ahead, one whenever there is nothing else to do; only once the service worker
 * has their files on this device, so that it takes nothing of the line.
 */
export async function loadScreensAhead(role: MemberRole): Promise<void> {
  if (!navigator.serviceWorker?.controller) return;
  for (const { screen } of screensOf(role)[0]?.routes ?? []) {
    await new Promise<void>((resolve) => {
      if ('requestIdleCallback' in window) requestIdleCallback(() => resolve(), { timeout: idleMs });
      else setTimeout(resolve, idleMs);
    });
    await screen.preload().catch(() => undefined);
  }
}
const idleMs = 2000;
