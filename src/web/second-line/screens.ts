import { lazyScreen } from '../lazy-screen.ts';
import type { RoleScreens } from '../roles.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({ en: { queue: 'Queue' }, de: { queue: 'Warteschlange' } });

export const secondLineScreens: RoleScreens = {
  roles: ['support', 'admin'],
  home: '/app/queue',
  menu: [{ href: '/app/queue', label: () => t().queue }],
  routes: [
    {
      path: '/app/queue',
      screen: lazyScreen(() => import('./queue.tsx').then((module) => module.QueueScreen)),
    },
  ],
};
