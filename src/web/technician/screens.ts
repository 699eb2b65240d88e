import { lazyScreen } from '../lazy-screen.ts';
import type { RoleScreens } from '../roles.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({ en: { visits: 'Visits' }, de: { visits: 'Einsätze' } });

export const technicianScreens: RoleScreens = {
  roles: ['technician', 'admin'],
  home: '/app/visits',
  menu: [{ href: '/app/visits', label: () => t().visits }],
  routes: [
    {
      path: '/app/visits',
      screen: lazyScreen(() => import('./visits.tsx').then((module) => module.VisitsScreen)),
    },
    {
      path: '/app/visits/:ticketId',
      screen: lazyScreen(() => import('./visit.tsx').then((module) => module.VisitScreen)),
    },
  ],
};
