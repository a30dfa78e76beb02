/** Keeps the page's own files, so that the static build works without a network. Nothing of a job passes through here. */
declare const DESK_FILES: readonly string[];
declare const DESK_BUILD: string;

interface LifeEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface FetchEvent extends LifeEvent {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}
interface Worker {
  readonly location: Location;
  readonly caches: CacheStorage;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LifeEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: FetchEvent) => void): void;
}

const worker = globalThis as unknown as Worker;
const CACHE = `blankwright-desk-${DESK_BUILD}`;
const base = new URL('./', worker.location.href);
const addresses = new Set([base.href, ...DESK_FILES.map((file) => new URL(file, base).href)]);

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));
worker.addEventListener('fetch', (event) => {
  const address = event.request.url.split(/[?#]/)[0]!;
  if (event.request.method === 'GET' && addresses.has(address)) event.respondWith(kept(address, event.request));
});

async function keepAll(): Promise<void> {
  const cache = await worker.caches.open(CACHE);
  await cache.addAll([...addresses]);
  await worker.skipWaiting();
}

async function forgetOthers(): Promise<void> {
  const names = await worker.caches.keys();
  await Promise.all(names.filter((name) => name.startsWith('blankwright-desk-') && name !== CACHE).map((name) => worker.caches.delete(name)));
  await worker.clients.claim();
}

async function kept(address: string, request: Request): Promise<Response> {
  const cache = await worker.caches.open(CACHE);
  return (await cache.match(address)) ?? fetch(request);
}
