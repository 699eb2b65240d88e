import { lazyScreen } from '../routing/lazy-screen.ts';
import type { RoleScreens } from '../routing/role-screens.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({
  en: { queue: 'Queue', past: 'Past cases', packets: 'Packets' },
  de: { queue: 'Warteschlange', past: 'Frühere Fälle', packets: 'Pakete' },
});

export const secondLineScreens: RoleScreens = {
  roles: ['support', 'admin'],
  home: '/app/queue',
  menu: [
    { href: '/app/queue', label: () => t().queue },
    { href: '/app/past-cases', label: () => t().past },
    { href: '/app/packets', label: () => t().packets },
  ],
  routes: [
    {
      path: '/app/queue',
      screen: lazyScreen(() => import('./queue.tsx').then((module) => module.QueueScreen)),
    },
    {
      path: '/app/cases/:ticketId',
      screen: lazyScreen(() => import('./case.tsx').then((module) => module.CaseScreen)),
    },
    {
      path: '/app/past-cases',
      screen: lazyScreen(() => import('./past-cases.tsx').then((module) => module.PastCasesScreen)),
    },
    {
      path: '/app/packets',
      screen: lazyScreen(() => import('./packets.tsx').then((module) => module.PacketsScreen)),
    },
    {
      path: '/app/packets/:packetId',
      screen: lazyScreen(() => import('./packet-view.tsx').then((module) => module.PacketScreen)),
    },
  ],
};
