// Keeps the sheet on the phone until it has gone through: past a reload, lost signal and an expired session.
// Without this script the sheet is a plain form.
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
  const words = bar.dataset;
  const signer = words.signer;
  const visit = form ? form.dataset.visit : (location.pathname.match(/^\/sheets\/([0-9a-f-]{36})$/i) || [])[1];
  let state = '';
  let notice = sessionStorage.getItem('eaveside.sent');
  let leaving = false;
  sessionStorage.removeItem('eaveside.sent');
  const named = name => document.getElementById(name);
  const make = (tag, text) => { const e = document.createElement(tag); e.textContent = text || ''; return e; };

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
  const waiting = async () => (await photos('readonly', s => s.getAll())).filter(p => p.signer === signer);
  const forget = async of => {
    localStorage.removeItem(key(of));
    for (const photo of await waiting()) {
      if (photo.visit === of) await photos('readwrite', s => s.delete(photo.id));
    }
    if (window.caches) await (await caches.open(CACHE)).delete('/sheets/' + of);
  };

  // Says what has not been sent, at the top and at the thumb, and offers what can be done about it.
  const clock = at => new Intl.DateTimeFormat(document.documentElement.lang, { hour: 'numeric', minute: '2-digit' }).format(at);
  const atThumb = kept => {
    const thumb = form && form.querySelector('[data-thumb]');
    if (!thumb) return;
    const says = { sending: words.atSending, signIn: words.atSignIn }[state] || words.atWait;
    thumb.hidden = !kept || !kept.signed;
    thumb.textContent = thumb.hidden ? '' : says.replace('{0}', clock(kept.at || Date.now()));
  };
  const count = (n, one, many) => (n === 1 ? one : many.replace('#', n));
  const render = async () => {
    const sheets = mine();
    const signed = sheets.filter(k => k.signed);
    const draft = sheets.find(k => !k.signed && (k.visit === visit || k.errors));
    const unsent = [];
    if (signed.length) unsent.push(count(signed.length, words.sheetOne, words.sheetMany));
    const pictures = (await waiting()).length;
    if (pictures) unsent.push(count(pictures, words.photoOne, words.photoMany));
    const say = [];
    const toHand = !form && draft && draft.visit === visit;
    if (notice) say.push(words.sentAt.replace('{0}', clock(Number(notice))));
    if (unsent.length) say.push(words.unsent.replace('{0}', unsent.join(' ' + words.and + ' ')));
    if (state) say.push(words[state]);
    else if (draft) say.push(toHand ? words.handed : draft.errors ? words.mend : words.kept);
    if (keys().length > sheets.length) say.push(words.others);
    bar.hidden = say.length === 0;
    bar.querySelector('[data-say]').textContent = say.join('. ');
    bar.querySelector('[data-send]').hidden = !unsent.length || state === 'sending' || state === 'signIn';
    const signIn = bar.querySelector('[data-in]');
    signIn.hidden = state !== 'signIn';
    signIn.href = '/sign-in?to=' + encodeURIComponent(location.pathname + location.search);
    const open = bar.querySelector('[data-open]');
    open.hidden = !draft || draft.visit === visit;
    open.href = '/sheets/' + (draft ? draft.visit : '');
    bar.querySelector('[data-hand]').hidden = !toHand;
    bar.querySelector('[data-drop]').hidden = !keptOf(visit);
    atThumb(keptOf(visit));
    bar.querySelectorAll('p.actions').forEach(p => { p.hidden = !p.querySelector(':scope > :not([hidden])'); });
  };

  // Sending: photos first, one at a time, then the sheets that are signed.
  class Stop extends Error {}
  // A bar of signal with no data behind it never answers: after a while that is no signal.
  const within = seconds => (AbortSignal.timeout ? AbortSignal.timeout(seconds * 1000) : undefined);
  const post = async (url, body, type, seconds) => {
    let answer;
    try {
      const headers = { 'Content-Type': type, Accept: 'application/json' };
      answer = await fetch(url, { method: 'POST', body, headers, signal: within(seconds) });
    } catch (e) {
      throw new Stop('noSignal');
    }
    if (answer.status === 401) throw new Stop('signIn');
    if (answer.status >= 500 || answer.status === 429 || answer.status === 408) throw new Stop('trouble');
    pause = SHORTEST;
    return answer;
  };
  const said = async answer => answer.json().catch(() => ({ title: answer.statusText }));
  const mend = (kept, errors) => {
    keep({ ...kept, signed: false, errors });
    if (kept.visit === visit) showErrors(errors);
    throw new Stop('mend');
  };
  const sendPhoto = async photo => {
    const answer = await post('/sheets/' + photo.visit + '/photos/' + photo.id, photo.blob, photo.blob.type || 'image/jpeg', 120);
    const box = form && form.querySelector(`input[value="${photo.id}"]`);
    await photos('readwrite', s => s.delete(photo.id));
    if (answer.ok && box) box.closest('.shot').classList.remove('waiting');
    const kept = keptOf(photo.visit);
    if (answer.ok || !kept) return;
    if (box) box.closest('.shot').remove();
    kept.fields = kept.fields.filter(field => field[1] !== photo.id);
    mend(kept, { '': words.photoRefused.replace('{0}', (await said(answer)).title) });
  };
  const sendSheet = async kept => {
    const body = new URLSearchParams(kept.fields).toString();
    const answer = await post('/sheets/' + kept.visit, body, 'application/x-www-form-urlencoded', 30);
    const says = await said(answer);
    if (answer.ok) {
      leaving = leaving || kept.visit === visit;
      await forget(kept.visit);
      notice = String(Date.now());
      if (kept.visit === visit) next = says.location;
      else if (!form) next = next || location.href;
      return;
    }
    mend(kept, says.errors || { '': says.title });
  };
  let next = null; // where to go on once everything is sent
  const sendAll = async () => {
    let refused = null;
    const orMend = deed => deed.catch(e => { if (e.message !== 'mend') throw e; refused = e; });
    for (const photo of await waiting()) await orMend(sendPhoto(photo));
    for (const kept of mine().filter(k => k.signed)) await orMend(sendSheet(kept));
    if (refused) throw refused;
  };

  // It is tried again by itself, at first soon, then every minute, and at once on every chance: nothing that the browser
  // says about its network can be relied on. One page sends at a time, so that each sheet goes once.
  const SHORTEST = 2000;
  const LONGEST = 60000;
  let pause = SHORTEST;
  let timer = 0;
  let busy = false;
  let missed = false; // whether there was a chance meanwhile
  const later = () => {
    clearTimeout(timer);
    timer = setTimeout(() => send(), pause * (1 + Math.random() / 4));
    pause = Math.min(LONGEST, pause * 2);
  };
  const alone = deed => (navigator.locks
    ? navigator.locks.request('eaveside-sheets', { ifAvailable: true }, lock => (lock ? deed() : later()))
    : deed());
  const send = async () => {
    missed = busy;
    if (busy || leaving) return;
    busy = true;
    try {
      if (mine().some(k => k.signed) || (await waiting()).length) {
        // What is tried again by itself is not told each time.
        if (state !== 'noSignal' && state !== 'trouble') state = 'sending';
        await render();
        await alone(sendAll);
        state = '';
      }
    } catch (e) {
      if (!(e instanceof Stop)) throw e;
      state = e.message;
      if (state === 'noSignal' || state === 'trouble') later();
    } finally {
      busy = false;
      await render();
    }
    if (next) {
      leaving = true;
      if (next === location.href) {
        sessionStorage.setItem('eaveside.sent', notice);
        location.reload();
      } else {
        location.assign(next);
      }
    } else if (missed && !state) {
      await send();
    }
  };
  const chance = () => {
    pause = SHORTEST;
    return send();
  };

  // The form: what is typed is kept at once.
  const save = signed => {
    if (leaving) return;
    keep({ visit, signer, signed, at: Date.now(), fields: [...new FormData(form)].filter(field => typeof field[1] === 'string') });
    if (state !== 'signIn') state = '';
    notice = null;
    render();
  };
  const showErrors = errors => {
    if (!form) return;
    document.querySelectorAll('.errors, form .error').forEach(e => e.remove());
    const box = Object.assign(make('div'), { className: 'errors', tabIndex: -1, role: 'alert' });
    const list = make('ul');
    box.append(make('h2', words.mend), list);
    for (const [name, text] of Object.entries(errors)) {
      const line = make('li');
      const field = name && named(name);
      if (field) {
        const label = form.querySelector(`label[for="${name}"]`);
        const link = make('a', label ? label.firstChild.textContent.trim() + ': ' + text : text);
        link.href = '#' + name;
        line.append(link);
        const error = Object.assign(make('p', text), { className: 'error', id: name + '-error' });
        const near = field.closest('.stepper, .input');
        if (/^(DETAILS|SECTION)$/.test(field.tagName)) field.children[0].after(error);
        else {
          (near || field).before(error);
          field.setAttribute('aria-invalid', 'true');
          field.setAttribute('aria-describedby', error.id);
        }
        for (let d = field.closest('details'); d; d = d.parentElement.closest('details')) d.open = true;
      } else {
        line.textContent = text;
      }
      list.append(line);
    }
    form.before(box);
    box.focus();
  };
  const addRow = box => {
    const last = box.querySelector(':scope > .row:last-of-type');
    const row = Number(last.dataset.row) + 1;
    const copy = last.cloneNode(true);
    const from = `${box.dataset.rows}-${last.dataset.row}-`;
    copy.dataset.row = row;
    copy.querySelectorAll('.error, .shot.taken').forEach(e => e.remove());
    copy.querySelectorAll('.wrong').forEach(e => e.classList.remove('wrong'));
    copy.querySelectorAll('*').forEach(element => {
      for (const { name, value } of [...element.attributes]) {
        if (value.startsWith(from)) element.setAttribute(name, `${box.dataset.rows}-${row}-` + value.slice(from.length));
      }
      if (element.type === 'checkbox') element.checked = false;
      else if (element.tagName === 'SELECT') element.selectedIndex = 0;
      else if (element.tagName === 'INPUT') element.value = 'newId' in element.dataset ? newId() : '';
    });
    last.after(copy);
    return copy;
  };
  const addShot = (box, id, picture, isWaiting) => {
    const shot = named('shot').content.firstElementChild.cloneNode(true);
    shot.classList.toggle('waiting', isWaiting);
    shot.querySelector('img').src = picture;
    Object.assign(shot.querySelector('input'), { name: box.dataset.photos, value: id });
    box.querySelector('.shots').append(shot);
  };
  // A photo that is ticked at one place is not offered at the others.
  const tidyShots = () => {
    const ticked = new Set([...form.querySelectorAll('.shot input:checked')].map(i => i.value));
    form.querySelectorAll('.shot input').forEach(i => { i.parentElement.hidden = !i.checked && ticked.has(i.value); });
  };
  const showWhen = () => form.querySelectorAll('[data-when]').forEach(e => {
    e.hidden = named(e.dataset.when).value !== e.dataset.is;
  });
  const fill = async fields => {
    const values = new Map();
    for (const [name, value] of fields) values.set(name, [...(values.get(name) || []), value]);
    form.querySelectorAll('[data-rows]').forEach(box => {
      const rows = [...values.keys()].filter(n => n.startsWith(box.dataset.rows + '-'))
        .map(n => parseInt(n.slice(box.dataset.rows.length + 1), 10)).filter(n => n >= 0);
      while (Math.max(-1, ...rows) > Number(box.querySelector(':scope > .row:last-of-type').dataset.row)) addRow(box);
    });
    for (const element of form.elements) {
      const value = values.get(element.name);
      if (element.type === 'checkbox') element.checked = (value || []).includes(element.value);
      else if (value && element.type !== 'file' && element.name !== 'more') element.value = value[0];
    }
    const unsent = new Map((await waiting()).map(p => [p.id, p.blob]));
    form.querySelectorAll('[data-photos]').forEach(box => {
      for (const id of values.get(box.dataset.photos) || []) {
        if (box.querySelector(`input[value="${id}"]`)) continue;
        addShot(box, id, unsent.has(id) ? URL.createObjectURL(unsent.get(id)) : `/photos/${id}/thumbnail`, unsent.has(id));
      }
    });
    form.querySelectorAll('.row input:not([type=hidden]), .row select').forEach(i => {
      const full = i.type === 'checkbox' ? i.checked : i.value !== '' && i.value !== (i.options ? i.options[0].value : '');
      for (let d = full && i.closest('details'); d; d = d.parentElement.closest('details')) d.open = true;
    });
  };

  // Done and skipped make up the plan: changing one fits the other.
  const takeBackSkips = card => {
    card.querySelectorAll('details .row').forEach(row => {
      row.querySelectorAll('input:not([type=hidden]):not([type=file]), select').forEach(i => {
        if (i.type === 'checkbox') i.checked = false;
        else if (i.tagName === 'SELECT') i.selectedIndex = 0;
        else i.value = '';
      });
    });
    tidyShots();
  };
  const number = input => Number(input.value || 0);
  const rest = (planned, of) => Math.max(0, Math.round((planned - of) * 1e6) / 1e6);
  let justOpened = null;
  // The tap that leaves "done" for "some were skipped" must not close what leaving has just opened.
  if (form) form.addEventListener('click', event => {
    const summary = event.target.closest('summary');
    if (summary && justOpened && summary.parentElement === justOpened.details && performance.now() - justOpened.at < 600) {
      event.preventDefault();
    }
  });
  const fit = target => {
    const card = target.closest('[data-line]');
    if (!card || target.type !== 'number') return;
    const planned = Number(card.dataset.planned);
    const done = named(card.dataset.line + 'done');
    const skips = [...card.querySelectorAll('input[name$="-quantity"]')];
    if (target !== done) {
      done.value = rest(planned, skips.reduce((sum, s) => sum + number(s), 0));
    } else if (done.value !== '' && skips.length === 1) {
      skips[0].value = rest(planned, number(done)) || '';
      if (!skips[0].value) takeBackSkips(card);
      const skipped = card.querySelector('details');
      if (skips[0].value && !skipped.open) {
        skipped.open = true;
        justOpened = { details: skipped, at: performance.now() };
      }
    }
  };

  // What can be seen to be missing without the server, so that nobody signs off half a sheet where there is no signal.
  const missing = () => {
    const errors = {};
    form.querySelectorAll('[data-needed]').forEach(i => { if (i.value === '') errors[i.id] = words.fill; });
    form.querySelectorAll('[data-line]').forEach(card => {
      const done = named(card.dataset.line + 'done');
      const skips = [...card.querySelectorAll('input[name$="-quantity"]')].filter(s => number(s) > 0);
      const sum = skips.reduce((all, s) => all + number(s), number(done));
      if (done.value !== '' && Math.abs(sum - Number(card.dataset.planned)) > 1e-6) errors[done.id] = words.differs;
      skips.map(s => named(s.id.replace(/quantity$/, 'reason'))).forEach(r => { if (!r.value) errors[r.id] = words.choose; });
    });
    const uses = { mix: ['mix', 'volume'], brush: ['lot', 'units'], item: ['item', 'quantity'], count: ['thing', 'found'] };
    for (const [group, [thing, amount]] of Object.entries(uses)) {
      form.querySelectorAll(`[data-rows="${group}"] > .row`).forEach(row => {
        const [what, much] = [thing, amount].map(name => named(`${group}-${row.dataset.row}-${name}`));
        if (what.value && !much.value) errors[much.id] = words.fill;
        if (!what.value && much.value) errors[what.id] = words.choose;
      });
    }
    form.querySelectorAll('[name^="extra-"][name$="-serviceItem"]').forEach(o => {
      const agreed = named(o.id.replace(/serviceItem$/, 'agreed'));
      if (o.value && !agreed.value.trim()) errors[agreed.id] = words.fill;
    });
    return errors;
  };

  // Photos are made smaller on the phone: the server keeps no more than 1,600 pixels a side.
  const shrunk = async file => {
    try {
      const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
      const scale = Math.min(1, 1600 / Math.max(picture.width, picture.height));
      const canvas = make('canvas');
      canvas.width = Math.round(picture.width * scale);
      canvas.height = Math.round(picture.height * scale);
      canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
      return await new Promise(resolve => { canvas.toBlob(blob => resolve(blob || file), 'image/jpeg', 0.85); });
    } catch (e) {
      return file; // the server says what type of file it is
    }
  };
  const take = async input => {
    const box = input.closest('[data-photos]');
    const files = [...input.files];
    input.value = '';
    for (const file of files) {
      const photo = { id: newId(), visit, signer, blob: await shrunk(file) };
      await photos('readwrite', s => s.put(photo));
      addShot(box, photo.id, URL.createObjectURL(photo.blob), true);
    }
    save(false);
    chance();
  };

  const start = async () => {
    if (!form) return;
    document.querySelectorAll('[data-plain]').forEach(e => { e.hidden = true; });
    form.querySelectorAll('[data-scripted]').forEach(e => { e.hidden = false; });
    form.noValidate = true;
    const kept = keptOf(visit);
    if (kept) {
      await fill(kept.fields);
      if (kept.errors) showErrors(kept.errors);
    } else if (!form.parentElement.querySelector('.errors')) {
      form.elements.id.value = newId();
    }
    showWhen();
    tidyShots();
    form.addEventListener('input', event => {
      if (event.target.type !== 'file') save(false);
    });
    form.addEventListener('change', event => {
      if (event.target.type === 'file') { take(event.target); return; }
      fit(event.target);
      showWhen();
      tidyShots();
      save(false);
    });
    form.addEventListener('keydown', event => {
      if (event.key === 'Enter' && event.target.tagName === 'INPUT') event.preventDefault();
    });
    form.addEventListener('click', event => {
      const button = event.target.closest('button');
      if (!button) return;
      if (button.name === 'more') {
        event.preventDefault();
        addRow(button.parentElement.querySelector(':scope > [data-rows]')).querySelector('input:not([type=hidden]), select').focus();
        showWhen();
        save(false);
      } else if (button.dataset.all) {
        const card = button.closest('[data-line]');
        takeBackSkips(card);
        named(button.dataset.all).value = card.dataset.planned;
        save(false);
      }
    });
    form.addEventListener('submit', event => {
      event.preventDefault();
      event.stopPropagation();
      document.querySelectorAll('.errors, form .error').forEach(e => e.remove());
      form.querySelectorAll('[aria-invalid]').forEach(e => e.removeAttribute('aria-invalid'));
      const errors = missing();
      const whole = !Object.keys(errors).length;
      save(whole);
      if (whole) chance(); else showErrors(errors);
    });
  };

  // The open sheet's page and files, for reading without signal; never another page.
  const keepPage = async () => {
    if (!window.caches || !navigator.serviceWorker) return;
    if (localStorage.getItem('eaveside.signer') !== signer) await caches.delete(CACHE);
    localStorage.setItem('eaveside.signer', signer);
    if (!form || !form.dataset.keeps) return;
    await navigator.serviceWorker.register('/sheet-worker.js', { scope: '/sheets' });
    const cache = await caches.open(CACHE);
    const files = [...document.querySelectorAll('link[rel=stylesheet], link[rel=icon], script[src]')].map(e => e.href || e.src);
    const page = await fetch(location.pathname, { headers: { Accept: 'text/html' } });
    if (page.ok && !page.redirected) {
      await cache.put(location.pathname, page);
      await cache.addAll(files);
      chance();
    }
  };

  bar.addEventListener('click', async event => {
    if (event.target.closest('[data-send]')) {
      state = '';
      chance();
    }
    if (event.target.closest('[data-hand]')) {
      keep({ ...keptOf(visit), signed: true, at: Date.now(), errors: undefined });
      chance();
    }
    if (event.target.closest('[data-drop]') && confirm(words.sure)) {
      leaving = true;
      await forget(visit);
      location.reload();
    }
  });
  for (const name of ['online', 'focus']) window.addEventListener(name, chance);
  window.addEventListener('pageshow', event => { if (event.persisted) location.reload(); });
  document.addEventListener('visibilitychange', () => { if (!document.hidden) chance(); });
  document.addEventListener('htmx:afterRequest', event => { if (event.detail.successful) chance(); });
  if (navigator.connection) navigator.connection.addEventListener('change', chance);
  // Another page has signed off, or has sent what is kept here, or thrown it away.
  window.addEventListener('storage', event => {
    if (!event.key || !event.key.startsWith(PREFIX)) return;
    if (form && event.key === key(visit) && event.newValue === null && !leaving) {
      leaving = true;
      location.reload();
    } else if (event.newValue && JSON.parse(event.newValue).signed) {
      chance();
    } else {
      render();
    }
  });
  start().then(send).then(() => keepPage().catch(e => { if (!(e instanceof TypeError)) throw e; })); // TypeError: no network
})();
