import { computed, signal } from '@preact/signals';
import { reachable } from './session.ts';

const isOnline = signal(navigator.onLine);
addEventListener('online', () => {
  isOnline.value = true;
});
addEventListener('offline', () => {
  isOnline.value = false;
});

/**
 * Whether the server can be written to now, as far as this device can tell: the browser says that there is a
 * connection, and the server answered last time it was asked.
 */
export const isConnected = computed(() => isOnline.value && reachable.value);
