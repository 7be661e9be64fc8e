/**
 * Serves the app from this device, so that it opens without signal. Everything is fetched once, whole, before it takes over;
 * a new version waits until the person agrees. Nothing but the app's own files passes through it.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

/** Filled in by the build: every file of the app, and a name that changes with any of them. */
const files: readonly string[] = ['__PRECACHE_FILES__'];
const version = '__PRECACHE_VERSION__';
const prefix = 'meadowpost-app-';

worker.addEventListener('install', (event) => {
  event.waitUntil(fillCache());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropOldCaches().then(() => worker.clients.claim()));
});

worker.addEventListener('message', (event) => {
  if (event.data === 'use new version') void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== worker.location.origin) return;
  event.respondWith(answer(request));
});

/** A half-filled cache must never be used: one file missing fails the whole install. */
async function fillCache(): Promise<void> {
  const cache = await caches.open(prefix + version);
  await cache.addAll(files.map((file) => new Request(file, { cache: 'reload' })));
}

async function dropOldCaches(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((n) => n.startsWith(prefix) && n !== prefix + version).map((n) => caches.delete(n)));
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(prefix + version);
  const page = request.mode === 'navigate';
  const kept = await cache.match(page ? './' : request, { ignoreSearch: true });
  return kept ?? fetch(request);
}
