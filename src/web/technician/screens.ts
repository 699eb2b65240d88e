import { firstScreen, lazyScreen } from '../routing/lazy-screen.ts';
import type { RoleScreens } from '../routing/role-screens.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({ en: { visits: 'Visits' }, de: { visits: 'Einsätze' } });

export const technicianScreens: RoleScreens = {
  roles: ['technician', 'admin'],
  home: '/app/visits',
  menu: [{ href: '/app/visits', label: () => t().visits }],
  routes: [
    {
      path: '/app/visits',
      screen: firstScreen(() => import('./visits.tsx').then((module) => module.VisitsScreen)),
    },
    {
      path: '/app/visits/:ticketId',
      screen: firstScreen(() => import('./visit.tsx').then((module) => module.VisitScreen)),
    },
    {
      path: '/app/visits/:ticketId/place/:place',
      screen: lazyScreen(() => import('./place-screen.tsx').then((module) => module.PlaceScreen)),
    },
    {
      path: '/app/visits/:ticketId/describe/:place',
      screen: lazyScreen(() => import('./describe-screen.tsx').then((module) => module.DescribeScreen)),
    },
    {
      path: '/app/visits/:ticketId/evidence',
      screen: lazyScreen(() => import('./evidence-screen.tsx').then((module) => module.EvidenceScreen)),
    },
    {
      path: '/app/visits/:ticketId/report',
      screen: lazyScreen(() => import('./report-screen.tsx').then((module) => module.ReportScreen)),
    },
    {
      path: '/app/visits/:ticketId/diary',
      screen: lazyScreen(() => import('./diary-screen.tsx').then((module) => module.DiaryScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage',
      screen: lazyScreen(() => import('./steps/triage-screen.tsx').then((module) => module.TriageScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/changes',
      screen: lazyScreen(() => import('./steps/changes.tsx').then((module) => module.ChangesScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/declare/:kind/:place',
      screen: lazyScreen(() => import('./steps/declare.tsx').then((module) => module.DeclareScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/kit',
      screen: lazyScreen(() => import('./steps/kit.tsx').then((module) => module.KitScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/culprit',
      screen: lazyScreen(() => import('./steps/culprit.tsx').then((module) => module.CulpritScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/escalate',
      screen: lazyScreen(() => import('./steps/escalate.tsx').then((module) => module.EscalateScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/leave-in',
      screen: lazyScreen(() => import('./steps/left-in.tsx').then((module) => module.LeaveInScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/wait',
      screen: lazyScreen(() => import('./steps/waiting.tsx').then((module) => module.WaitScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/late-change',
      screen: lazyScreen(() => import('./steps/late-change.tsx').then((module) => module.LateChangeScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/logs',
      screen: lazyScreen(() => import('./steps/logs.tsx').then((module) => module.LogsScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/watches',
      screen: lazyScreen(() => import('./steps/watches.tsx').then((module) => module.WatchesScreen)),
    },
    {
      path: '/app/visits/:ticketId/triage/looks',
      screen: lazyScreen(() => import('./steps/looks.tsx').then((module) => module.LooksScreen)),
    },
  ],
};
