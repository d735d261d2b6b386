import { signal } from '@preact/signals';

/** Takes the page to a newer version that waits to be used; null while none waits. */
export const newerVersion = signal<(() => void) | null>(null);

const script = 'offline.js';

/**
 * Lets the page work without its server after the first load. A page that `lossbook open` serves needs no such
 * help, and one kept from another server at the same address must not stand in its way.
 * @param fromHost true where a static host serves the page
 */
export function followOffline(fromHost: boolean): void {
  // Absent on plain http outside this machine; there the page needs its server.
  const workers = navigator.serviceWorker as ServiceWorkerContainer | undefined;
  if (workers === undefined) return;
  if (!fromHost) {
    void workers.getRegistrations().then((all) => all.forEach((r) => void r.unregister()));
    return;
  }
  void workers
    .register(script)
    .then((registration) => {
      const offer = () => {
        const waiting = registration.waiting;
        if (waiting === null || workers.controller === null) return;
        newerVersion.value = () => {
          // Another tab has taken it over already: this one has only to follow.
          if (registration.waiting !== waiting) return location.reload();
          workers.addEventListener('controllerchange', () => location.reload(), { once: true });
          waiting.postMessage('take over');
        };
      };
      offer();
      registration.addEventListener('updatefound', () => {
        registration.installing?.addEventListener('statechange', offer);
      });
    })
    // A browser that refuses is no trouble: the page works as long as its server answers.
    .catch(() => {});
}
