import { lazyScreen } from '../lazy-screen.ts';
import type { RoleScreens } from '../roles.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({ en: { members: 'Members' }, de: { members: 'Mitglieder' } });

export const adminScreens: RoleScreens = {
  roles: ['admin'],
  home: '/app/members',
  menu: [{ href: '/app/members', label: () => t().members }],
  routes: [
    {
      path: '/app/members',
      screen: lazyScreen(() => import('./members.tsx').then((module) => module.MembersScreen)),
    },
  ],
};
