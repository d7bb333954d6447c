// Sends what the phone keeps of its sheets, says what has not been sent yet, and offers what can be done about it.
(() => {
  'use strict';
  const sheet = window.jobSheet;
  if (!sheet) return;
  const { bar, form, visit, words, PREFIX, key, keptOf, keep, keys, mine, photos, waiting, refused, remove, forgetSheet, forget } = sheet;
  let state = '';
  let notice = sessionStorage.getItem('eaveside.sent');
  let leaving = false;
  sessionStorage.removeItem('eaveside.sent');

  // Says what has not been sent, at the top and at the thumb, and offers what can be done about it.
  const clock = at => new Intl.DateTimeFormat(document.documentElement.lang, { hour: 'numeric', minute: '2-digit' }).format(at);
  const atThumb = kept => {
    const thumb = form && form.querySelector('[data-thumb]');
    if (!thumb) return;
    const says = kept && kept.again ? words.atChanged : { sending: words.atSending, signIn: words.atSignIn }[state] || words.atWait;
    thumb.hidden = !kept || !(kept.signed || kept.again);
    thumb.textContent = thumb.hidden ? '' : says.replace('{0}', clock(kept.at || Date.now()));
  };
  const count = (n, one, many) => (n === 1 ? one : many.replace('#', n));
  // Photos that the server did not take, each with its reason and what can be done with it.
  const list = bar.querySelector('[data-refused]');
  let listed = '';
  const listRefused = async () => {
    const photosRefused = await refused();
    const now = JSON.stringify(photosRefused.map(p => [p.id, p.refused]));
    if (now === listed) return photosRefused.length; // what somebody is about to press stays where it is
    listed = now;
    list.querySelectorAll('img').forEach(i => URL.revokeObjectURL(i.src));
    list.replaceChildren(...photosRefused.map(photo => {
      const item = bar.querySelector('template').content.firstElementChild.cloneNode(true);
      const picture = URL.createObjectURL(photo.blob);
      item.querySelector('img').src = picture;
      const which = photo.name ? photo.name + ': ' : '';
      item.querySelector('[data-reason]').textContent = which + words.photoRefused.replace('{0}', photo.refused);
      Object.assign(item.querySelector('a'), { href: picture, download: photo.name || photo.id });
      item.querySelectorAll('button').forEach(b => { b.value = photo.id; });
      return item;
    }));
    return photosRefused.length;
  };
  const render = async () => {
    const sheets = mine();
    const signed = sheets.filter(k => k.signed);
    const unsigned = sheets.filter(k => !k.signed);
    // That of this page first; the list of the day, which has none, tells of any.
    const draft = unsigned.find(k => k.visit === visit) || unsigned.find(k => !visit || k.errors || k.again);
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
    const some = await listRefused();
    bar.hidden = say.length === 0 && !some;
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
    // We answer a script in its own words. Anything else is not from us, such as a server that is only starting, but that something is
    // too large.
    const ours = answer.status === 413 || (answer.headers.get('Content-Type') || '').includes('json');
    if (!ours || answer.status >= 500 || answer.status === 429 || answer.status === 408) throw new Stop('trouble');
    pause = SHORTEST;
    return answer;
  };
  const said = async answer => answer.json().catch(() => ({ title: answer.statusText }));
  const mend = (kept, errors) => {
    keep({ ...kept, signed: false, errors });
    if (form && kept.visit === visit) sheet.showErrors(errors);
    throw new Stop('mend');
  };
  const sendPhoto = async photo => {
    const answer = await post('/sheets/' + photo.visit + '/photos/' + photo.id, photo.blob, photo.blob.type || 'image/jpeg', 120);
    const box = form && form.querySelector(`input[value="${photo.id}"]`);
    if (answer.ok) {
      await remove(photo);
      if (box) box.closest('.shot').classList.remove('waiting');
      return;
    }
    const reason = (await said(answer)).title || String(answer.status);
    await photos('readwrite', s => s.put({ ...photo, refused: reason }));
    if (box) box.closest('.shot').remove();
    const kept = keptOf(photo.visit);
    const fields = kept ? kept.fields.filter(field => field[1] !== photo.id) : [];
    // A sheet that does not show it goes without it.
    if (kept && fields.length < kept.fields.length) mend({ ...kept, fields }, { '': words.photoRefused.replace('{0}', reason) });
  };
  const sendSheet = async kept => {
    const body = new URLSearchParams(kept.fields).toString();
    const answer = await post('/sheets/' + kept.visit, body, 'application/x-www-form-urlencoded', 30);
    const says = await said(answer);
    // What was changed while it was on its way is not what the server has answered to: it stays.
    const now = keptOf(kept.visit);
    const changed = Boolean(now) && now.at !== kept.at;
    if (answer.ok && changed) {
      notice = String(Date.now());
      return;
    }
    if (answer.ok) {
      leaving = leaving || kept.visit === visit;
      await forgetSheet(kept.visit);
      notice = String(Date.now());
      if (kept.visit === visit) next = says.location;
      else if (!form) next = next || location.href;
      return;
    }
    mend(now || kept, says.errors || { '': says.title });
  };
  let next = null; // where to go on once everything is sent
  const sendAll = async () => {
    let stop = null;
    const orMend = deed => deed.catch(e => { if (e.message !== 'mend') throw e; stop = e; });
    for (const photo of await waiting()) await orMend(sendPhoto(photo));
    for (const kept of mine().filter(k => k.signed)) await orMend(sendSheet(kept));
    if (stop) throw stop;
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

  // What is typed is kept at once.
  const save = signed => {
    if (leaving) return;
    // Who signed off and then touched a field has not sent what is shown, and must be told.
    const before = keptOf(visit);
    const again = !signed && Boolean(before && (before.signed || before.again));
    keep({ visit, signer: sheet.signer, signed, again, at: Date.now(), fields: [...new FormData(form)].filter(field => typeof field[1] === 'string') });
    if (state !== 'signIn') state = '';
    notice = null;
    render();
  };
  bar.addEventListener('click', async event => {
    if (event.target.closest('[data-send]')) {
      state = '';
      chance();
    }
    const again = event.target.closest('[data-again]');
    const discard = event.target.closest('[data-discard]');
    if (again || discard) {
      const photo = (await refused()).find(p => p.id === (again || discard).value);
      if (again && photo) await photos('readwrite', s => s.put({ ...photo, refused: undefined, again: true }));
      if (discard && photo && confirm(words.photoSure)) await remove(photo);
      if (again) chance(); else render();
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
      return;
    }
    const kept = event.newValue ? JSON.parse(event.newValue) : {};
    // Where the app is open twice, the other page may be the one that sends and is answered.
    if (form && event.key === key(visit) && kept.errors) sheet.showErrors(kept.errors);
    if (kept.signed) chance(); else render();
  });

  Object.assign(sheet, { save, chance });
  const opened = form ? sheet.open() : Promise.resolve();
  opened.then(send).then(() => sheet.keepPage())
    .then(kept => kept && chance());
})();
