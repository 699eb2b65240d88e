import { signal } from '@preact/signals';

/** A newer version of the client is on this device and waits for its turn. */
export const newerVersion = signal<ServiceWorker | null>(null);

/** Has the service worker keep the client's own files, so that it starts without a connection. */
export function keepShell(): void {
  if (!('serviceWorker' in navigator)) return;
  const hadOne = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (hadOne) location.reload();
  });
  navigator.serviceWorker
    .register('/sw.js', { scope: '/' })
    .then((registration) => {
      const look = (worker: ServiceWorker | null) => {
        worker?.addEventListener('statechange', () => {
          if (worker.state === 'installed' && navigator.serviceWorker.controller !== null)
            newerVersion.value = worker;
        });
      };
      if (registration.waiting !== null) newerVersion.value = registration.waiting;
      look(registration.installing);
      registration.addEventListener('updatefound', () => look(registration.installing));
    })
    .catch(() => undefined);
}

/** Puts the newer version in charge; the page then loads itself again. */
export const loadNewerVersion = (): void => newerVersion.peek()?.postMessage({ type: 'SKIP_WAITING' });
