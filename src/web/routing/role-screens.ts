import type { MemberRole } from '../../../shared/contract/primitives.ts';
import type { LazyScreen } from './lazy-screen.ts';

/** A screen and its address, which begins with `/app/`. `:id` and the like reach the screen as properties. */
export type ScreenRoute = { path: string; screen: LazyScreen };
export type MenuEntry = { href: string; label: () => string };

/** What one role brings: its screens, loaded when they are first gone to, and its part of the menu. */
export type RoleScreens = {
  roles: readonly MemberRole[];
  /** Where its members begin. */
  home: string;
  menu: readonly MenuEntry[];
  routes: readonly ScreenRoute[];
};
