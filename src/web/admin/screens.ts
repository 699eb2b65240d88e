import { lazyScreen } from '../routing/lazy-screen.ts';
import type { RoleScreens } from '../routing/role-screens.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({
  en: { members: 'Members', numbers: 'Our numbers' },
  de: { members: 'Mitglieder', numbers: 'Unsere Zahlen' },
});

export const adminScreens: RoleScreens = {
  roles: ['admin'],
  home: '/app/members',
  menu: [
    { href: '/app/members', label: () => t().members },
    { href: '/app/numbers', label: () => t().numbers },
  ],
  routes: [
    {
      path: '/app/members',
      screen: lazyScreen(() => import('./members.tsx').then((module) => module.MembersScreen)),
    },
    {
      path: '/app/numbers',
      screen: lazyScreen(() => import('./numbers.tsx').then((module) => module.NumbersScreen)),
    },
    {
      path: '/app/numbers/firmware',
      screen: lazyScreen(() => import('./firmware.tsx').then((module) => module.FirmwareScreen)),
    },
    {
      path: '/app/numbers/fault-model',
      screen: lazyScreen(() => import('./fault-model.tsx').then((module) => module.FaultModelScreen)),
    },
    {
      path: '/app/numbers/logs',
      screen: lazyScreen(() => import('./recognition.tsx').then((module) => module.RecognitionScreen)),
    },
    {
      path: '/app/numbers/changes',
      screen: lazyScreen(() => import('./own-changes.tsx').then((module) => module.OwnChangesScreen)),
    },
    {
      path: '/app/numbers/usage',
      screen: lazyScreen(() => import('./usage.tsx').then((module) => module.UsageScreen)),
    },
    {
      path: '/app/numbers/audit-log',
      screen: lazyScreen(() => import('./audit-log.tsx').then((module) => module.AuditLogScreen)),
    },
    {
      path: '/app/numbers/export',
      screen: lazyScreen(() => import('./export.tsx').then((module) => module.ExportScreen)),
    },
    {
      path: '/app/sites/:siteId/data',
      screen: lazyScreen(() => import('./client-data.tsx').then((module) => module.ClientDataScreen)),
    },
    {
      path: '/app/tickets/:ticketId/texts',
      screen: lazyScreen(() => import('./texts.tsx').then((module) => module.TextsScreen)),
    },
  ],
};
