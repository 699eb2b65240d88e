/** What the tabs of one browser tell each other. */
export type TabMessage =
  | { kind: 'outbox'; memberId: string }
  | { kind: 'document'; memberId: string; path: string }
  | { kind: 'news'; memberId: string; event: 'change' | 'resync'; data: string };

const channel = new BroadcastChannel('halfsplit-tabs');

export const tellTabs = (message: TabMessage): void => channel.postMessage(message);
export function onTabMessage(take: (message: TabMessage) => void): void {
  channel.addEventListener('message', ({ data }) => take(data as TabMessage));
}
