import { lazyScreen } from '../lazy-screen.ts';
import type { RoleScreens } from '../roles.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({ en: { board: 'Board' }, de: { board: 'Tafel' } });

export const dispatcherScreens: RoleScreens = {
  roles: ['dispatcher', 'admin'],
  home: '/app/board',
  menu: [{ href: '/app/board', label: () => t().board }],
  routes: [
    {
      path: '/app/board',
      screen: lazyScreen(() => import('./board.tsx').then((module) => module.BoardScreen)),
    },
  ],
};
