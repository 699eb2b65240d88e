import { signal } from '@preact/signals';

/** What the browser says of the connection; `reachable` (api/session.ts) says whether the server answers. */
export const isOnline = signal(navigator.onLine);
addEventListener('online', () => {
  isOnline.value = true;
});
addEventListener('offline', () => {
  isOnline.value = false;
});
