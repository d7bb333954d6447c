// Lets the open sheet reload without signal: the network first, else the page and files that the sheet's script kept.
'use strict';
const CACHE = 'eaveside-sheets';
const SHEET = /^\/sheets\/[0-9a-f-]{36}$/i;
const PATIENCE = 6000;

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

const kept = async path => (await caches.open(CACHE)).match(path);

async function page(request, path) {
  const copy = await kept(path);
  if (!copy) return fetch(request);
  const late = new Promise(resolve => { setTimeout(resolve, PATIENCE, copy); });
  // A server that is only starting, or a proxy that stands before nothing, is no signal either.
  const now = fetch(request).then(answer => (answer.status >= 500 ? copy : answer), () => copy);
  return Promise.race([now, late]);
}

self.addEventListener('fetch', event => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (request.mode === 'navigate' && SHEET.test(url.pathname)) {
    event.respondWith(page(request, url.pathname));
  } else if (url.pathname.startsWith('/assets/')) {
    event.respondWith(kept(url.pathname).then(copy => copy || fetch(request)));
  }
});
