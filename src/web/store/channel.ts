/** What the tabs of one browser tell each other. */
export type TabMessage =
  | { kind: 'outbox'; memberId: string }
  | { kind: 'document'; memberId: string; path: string }
  | { kind: 'draft'; memberId: string; name: string }
  | { kind: 'news'; memberId: string; event: 'change' | 'resync'; data: string };

const channel = new BroadcastChannel('halfsplit-tabs');

export const tellTabs = (message: TabMessage): void => channel.postMessage(message);
/** @returns what to call where it is to be heard no longer */
export function onTabMessage(take: (message: TabMessage) => void): () => void {
  const hear = ({ data }: MessageEvent): void => take(data as TabMessage);
  channel.addEventListener('message', hear);
  return () => channel.removeEventListener('message', hear);
}
