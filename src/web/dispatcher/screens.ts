import { lazyScreen } from '../routing/lazy-screen.ts';
import type { RoleScreens } from '../routing/role-screens.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({
  en: { call: 'Call', board: 'Board', waiting: 'Who waits', find: 'Find' },
  de: { call: 'Anruf', board: 'Tafel', waiting: 'Wer wartet', find: 'Suchen' },
});

export const dispatcherScreens: RoleScreens = {
  roles: ['dispatcher', 'admin'],
  home: '/app/call',
  menu: [
    { href: '/app/call', label: () => t().call },
    { href: '/app/board', label: () => t().board },
    { href: '/app/waiting', label: () => t().waiting },
    { href: '/app/find', label: () => t().find },
  ],
  routes: [
    {
      path: '/app/call',
      screen: lazyScreen(() => import('./call/call.tsx').then((module) => module.CallScreen)),
    },
    {
      path: '/app/call/:ticketId',
      screen: lazyScreen(() => import('./call/after-call.tsx').then((module) => module.AfterCallScreen)),
    },
    {
      path: '/app/board',
      screen: lazyScreen(() => import('./board/board.tsx').then((module) => module.BoardScreen)),
    },
    {
      path: '/app/waiting',
      screen: lazyScreen(() => import('./board/waiting.tsx').then((module) => module.WaitingScreen)),
    },
    {
      path: '/app/find',
      screen: lazyScreen(() => import('./board/find.tsx').then((module) => module.FindScreen)),
    },
    {
      path: '/app/tickets/:ticketId',
      screen: lazyScreen(() => import('./ticket/ticket.tsx').then((module) => module.TicketScreen)),
    },
    {
      path: '/app/tickets/:ticketId/report',
      screen: lazyScreen(() => import('./ticket/report-screen.tsx').then((module) => module.ReportScreen)),
    },
    {
      path: '/app/sites/new',
      screen: lazyScreen(() => import('./places/new-site.tsx').then((module) => module.NewSiteScreen)),
    },
    {
      path: '/app/sites/:siteId',
      screen: lazyScreen(() => import('./places/site.tsx').then((module) => module.SiteScreen)),
    },
    {
      path: '/app/sites/:siteId/chains/new',
      screen: lazyScreen(() => import('./places/new-chain.tsx').then((module) => module.NewChainScreen)),
    },
    {
      path: '/app/chains/:chainId',
      screen: lazyScreen(() => import('./places/chain.tsx').then((module) => module.ChainScreen)),
    },
  ],
};
