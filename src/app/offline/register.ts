/** Puts the app on this device and says when a newer one is ready. Never changes versions unasked. */

export type OfflineState = 'not-possible' | 'filling' | 'ready' | 'update-waiting';

/** `tell` hears every change; the returned function takes the waiting version and reloads. Only for the built app. */
export async function keepOffline(tell: (state: OfflineState) => void): Promise<() => void> {
  if (!('serviceWorker' in navigator)) {
    tell('not-possible');
    return () => undefined;
  }
  const registration = await navigator.serviceWorker.register(new URL('service-worker.js', document.baseURI), {
    type: 'module',
  });
  const look = () => tell(stateOf(registration));
  registration.addEventListener('updatefound', () => {
    look();
    registration.installing?.addEventListener('statechange', look);
  });
  registration.installing?.addEventListener('statechange', look);
  look();
  return () => takeNewVersion(registration);
}

function stateOf(registration: ServiceWorkerRegistration): OfflineState {
  if (registration.waiting && registration.active) return 'update-waiting';
  return registration.active ? 'ready' : 'filling';
}

function takeNewVersion({ waiting }: ServiceWorkerRegistration): void {
  // Nothing waits where another window has taken the version meanwhile: this one only has to be opened again.
  if (!waiting) return void location.reload();
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting.postMessage('use new version');
}
