/**
 * The worker of the bench card: it keeps the files of its page on the phone, so that the page opens
 * where there is no server, and sends entries when the server is back and no page is open.
 */
import { send } from './sending';

declare const __BUILD__: string;
declare const __FILES__: string[];

/** What a worker has that a page has not; the checker knows pages only. */
interface Worker {
  addEventListener(kind: string, heard: (event: never) => void): void;
  skipWaiting(): Promise<void>;
  clients: { claim(): Promise<void> };
}
interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}
interface Asked extends Lasting {
  request: Request;
  respondWith(answer: Promise<Response>): void;
}

const worker = self as unknown as Worker;

const STEM = 'bench-';
const CACHE = STEM + __BUILD__;
const PAGE = '/bench';

worker.addEventListener('install', (event: Lasting) => {
  event.waitUntil(installed());
});

worker.addEventListener('activate', (event: Lasting) => {
  event.waitUntil(activated());
});

worker.addEventListener('fetch', (event: Asked) => {
  const { request } = event;
  const way = new URL(request.url);
  if (request.method !== 'GET' || way.origin !== location.origin) return;
  if (way.pathname.startsWith('/api/')) return;
  const isPage = way.pathname === PAGE || way.pathname.startsWith(`${PAGE}/`);
  event.respondWith(answered(isPage ? PAGE : request));
});

worker.addEventListener('sync', (event: Lasting) => {
  event.waitUntil(sent());
});

/** All files of this build, or none: one that is missing makes the worker wait for the next time. */
async function installed(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.addAll(__FILES__.map((file) => new Request(file, { cache: 'reload' })));
  await worker.skipWaiting();
}

/** The files of other builds go; entries and cards lie elsewhere and stay. */
async function activated(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(STEM) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function answered(wanted: Request | string): Promise<Response> {
  return (await (await caches.open(CACHE)).match(wanted)) ?? fetch(wanted);
}

/** Refused where something is left, so that the browser wakes the worker again. */
async function sent(): Promise<void> {
  if ((await send(Date.now())) !== 'all') throw new Error('entries are left');
}
