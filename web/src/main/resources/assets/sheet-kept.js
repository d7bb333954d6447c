// What the phone keeps of its sheets: past a reload, lost signal and an expired session. The other scripts of the sheet use
// it; where nothing can be kept, or the page shows no sheets, there is none, and a sheet is a plain form.
(() => {
  'use strict';
  const bar = document.getElementById('unsent');
  const form = document.getElementById('sheet');
  const PREFIX = 'eaveside.sheet.';
  const CACHE = 'eaveside-sheets';
  try {
    localStorage.setItem('eaveside.probe', '1');
    localStorage.removeItem('eaveside.probe');
  } catch (e) {
    return; // nowhere to keep anything: the plain form it is
  }
  if (!bar) return;
  const { signer } = bar.dataset;
  const visit = form ? form.dataset.visit : (location.pathname.match(/^\/sheets\/([0-9a-f-]{36})$/i) || [])[1];

  // UUID version 7 (RFC 9562): milliseconds first, then chance.
  const newId = () => {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    let time = Date.now();
    for (let i = 5; i >= 0; i--) { bytes[i] = time % 256; time = Math.floor(time / 256); }
    bytes[6] = 0x70 | (bytes[6] & 0x0f);
    bytes[8] = 0x80 | (bytes[8] & 0x3f);
    return Array.from(bytes, b => b.toString(16).padStart(2, '0')).join('')
      .replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
  };

  // What is kept: one sheet for each visit and signer, and photos that have not gone up yet.
  const key = of => PREFIX + signer + '.' + of;
  const keptOf = of => JSON.parse(localStorage.getItem(key(of)) || 'null');
  const keep = kept => localStorage.setItem(key(kept.visit), JSON.stringify(kept));
  const keys = () => Object.keys(localStorage).filter(k => k.startsWith(PREFIX));
  const mine = () => keys().filter(k => k.startsWith(PREFIX + signer)).map(k => JSON.parse(localStorage.getItem(k)));
  const answerOf = request => new Promise((resolve, reject) => {
    request.onupgradeneeded = () => request.result.createObjectStore('photos', { keyPath: 'id' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const store = answerOf(indexedDB.open('eaveside-sheets', 1));
  const photos = async (mode, deed) => answerOf(deed((await store).transaction('photos', mode).objectStore('photos')));
  const pictures = async () => (await photos('readonly', s => s.getAll())).filter(p => p.signer === signer);
  const waiting = async () => (await pictures()).filter(p => !p.refused);
  // What the server does not take is there nowhere else: it stays until its technician discards it.
  const refused = async () => (await pictures()).filter(p => p.refused);
  const remove = photo => photos('readwrite', s => s.delete(photo.id));
  // Photos go by themselves: one that is not sent yet is still sent once its sheet has gone through.
  const forgetSheet = async of => {
    localStorage.removeItem(key(of));
    if (window.caches) await (await caches.open(CACHE)).delete('/sheets/' + of);
  };
  const forget = async of => {
    for (const photo of await waiting()) {
      if (photo.visit === of && !photo.again) await remove(photo);
    }
    await forgetSheet(of);
  };

  // The open sheet's page and files, for reading without signal; never another page. Tells whether they are kept.
  const keepPage = async () => {
    if (!window.caches || !navigator.serviceWorker) return false;
    if (localStorage.getItem('eaveside.signer') !== signer) await caches.delete(CACHE);
    localStorage.setItem('eaveside.signer', signer);
    if (!form || !form.dataset.keeps) return false;
    const cache = await caches.open(CACHE);
    const files = [...document.querySelectorAll('link[rel=stylesheet], link[rel=icon], script[src]')].map(e => e.href || e.src);
    try {
      await navigator.serviceWorker.register('/sheet-worker.js', { scope: '/sheets' });
      const page = await fetch(location.pathname, { headers: { Accept: 'text/html' } });
      if (!page.ok || page.redirected) return false;
      await cache.put(location.pathname, page);
      await cache.addAll(files);
      return true;
    } catch (e) {
      if (e instanceof TypeError) return false; // no network
      throw e;
    }
  };

  window.jobSheet = { bar, form, visit, signer, words: bar.dataset, PREFIX, newId, key, keptOf, keep, keys, mine, photos, waiting, refused, remove, forgetSheet, forget, keepPage };
})();
