import { computed } from '@preact/signals';
import { reachable } from '../api/session.ts';
import { isOnline } from '../frame/online.ts';

/** Whether the server can be written to now, as far as this device can tell. */
export const isConnected = computed(() => isOnline.value && reachable.value);
