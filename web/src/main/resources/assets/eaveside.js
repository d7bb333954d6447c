// Small conveniences; every page works without them.
(() => {
  'use strict';
  const focusErrors = root => {
    const box = root.querySelector('[data-focus]');
    if (box) box.focus();
  };
  // A table that is wider than the window scrolls by keyboard too.
  const reachable = root => {
    root.querySelectorAll('.table:not([tabindex])').forEach(table => {
      if (table.scrollWidth > table.clientWidth) table.tabIndex = 0;
    });
  };
  document.addEventListener('DOMContentLoaded', () => { focusErrors(document); reachable(document); });
  document.addEventListener('htmx:afterSwap', event => { focusErrors(event.target); reachable(document); });

  // What could not be asked for leaves the page behind what was entered: it says so, until the next answer.
  const behind = (event, text) => {
    const box = document.getElementById('behind');
    const failed = text !== undefined;
    box.hidden = !failed;
    box.textContent = failed ? text(box.dataset) : '';
    event.detail.target.classList.toggle('stale', failed);
  };
  document.addEventListener('htmx:responseError', event => {
    behind(event, texts => event.detail.xhr.status === 401 ? texts.ended : texts.away);
  });
  document.addEventListener('htmx:sendError', event => behind(event, texts => texts.away));
  document.addEventListener('htmx:beforeSwap', event => { if (event.detail.shouldSwap) behind(event); });

  // The search of every page: "/" goes to it, arrows go through what it finds, Enter opens. What lies below the field is of
  // what was typed a moment ago: Enter opens it only where that is what is typed now, else the server is asked.
  const find = document.getElementById('find');
  if (find) {
    const hits = document.getElementById('hits');
    const options = () => [...hits.querySelectorAll('[role=option]')];
    const select = option => {
      options().forEach(other => other.setAttribute('aria-selected', String(other === option)));
      if (option) {
        find.setAttribute('aria-activedescendant', option.id);
        option.scrollIntoView({ block: 'nearest' });
      } else {
        find.removeAttribute('aria-activedescendant');
      }
    };
    const isOpen = () => !hits.hidden && options().length > 0;
    const show = open => {
      hits.hidden = !open;
      find.setAttribute('aria-expanded', String(isOpen()));
      if (!open) select(null);
    };
    find.setAttribute('role', 'combobox');
    find.setAttribute('aria-autocomplete', 'list');
    find.setAttribute('aria-expanded', 'false');
    find.setAttribute('aria-controls', 'hits');
    find.addEventListener('focus', () => show(true));
    find.addEventListener('input', () => { if (!find.value.trim()) hits.replaceChildren(); });
    hits.addEventListener('htmx:afterSwap', () => { show(document.activeElement === find); select(options()[0]); });
    find.addEventListener('keydown', event => {
      const all = options();
      const at = all.findIndex(option => option.getAttribute('aria-selected') === 'true');
      if (event.key === 'Escape') {
        if (!isOpen()) find.blur();
        show(false);
      } else if (all.length && (event.key === 'ArrowDown' || event.key === 'ArrowUp')) {
        event.preventDefault();
        show(true);
        select(all[(at + (event.key === 'ArrowDown' ? 1 : all.length - 1)) % all.length]);
      } else if (event.key === 'Enter' && isOpen() && at >= 0) {
        const list = document.getElementById('hit-list');
        if (list.dataset.for !== find.value.trim()) return;
        event.preventDefault();
        location.assign(all[at].href);
      }
    });
    document.addEventListener('click', event => { if (!event.target.closest('.find')) show(false); });
    find.form.addEventListener('focusout', event => { if (!find.form.contains(event.relatedTarget)) show(false); });
    document.addEventListener('keydown', event => {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.target.closest('input, textarea, select, [contenteditable]')) return;
      event.preventDefault();
      find.focus();
      find.select();
    });
  }

  // What opens over the page closes like any menu.
  const menus = 'details.create[open], details.columns[open], details.mark-why[open]';
  document.addEventListener('click', event => {
    document.querySelectorAll(menus).forEach(menu => { if (!menu.contains(event.target)) menu.open = false; });
  });
  document.addEventListener('keydown', event => {
    const menu = event.key === 'Escape' && document.querySelector(menus);
    if (menu) { menu.open = false; menu.querySelector('summary').focus(); }
  });

  // The way back from a thing to its list keeps what narrows the list, and where on it one was.
  const kept = path => {
    try { return JSON.parse(sessionStorage.getItem('list:' + path)) || {}; } catch (e) { return {}; }
  };
  const isList = document.querySelector('#found, .due-list') !== null;
  window.addEventListener('pagehide', () => {
    if (!isList) return;
    try {
      sessionStorage.setItem('list:' + location.pathname, JSON.stringify({ search: location.search, top: scrollY }));
    } catch (e) { /* nowhere to keep it: the list begins anew */ }
  });
  document.querySelectorAll('.crumbs a').forEach(link => {
    const list = kept(link.pathname);
    if (list.search && !link.search) link.search = list.search;
    link.addEventListener('click', () => {
      try { sessionStorage.setItem('back:' + link.pathname, 'yes'); } catch (e) { /* it begins at its top */ }
    });
  });
  try {
    if (isList && sessionStorage.getItem('back:' + location.pathname)) {
      sessionStorage.removeItem('back:' + location.pathname);
      const list = kept(location.pathname);
      if (list.search === location.search) scrollTo(0, list.top);
    }
  } catch (e) { /* as above */ }

  // What cannot be taken back, or shuts out another, is asked once more.
  document.addEventListener('submit', event => {
    const question = event.target.dataset.ask;
    if (question && !confirm(question)) {
      event.preventDefault();
      event.stopImmediatePropagation();
    }
  }, true);

  // One press, one request: a form that is on its way is not sent again.
  document.addEventListener('submit', event => {
    const form = event.target;
    if (form.dataset.sent) { event.preventDefault(); return; }
    if (form.method === 'post') {
      form.dataset.sent = 'yes';
      setTimeout(() => { delete form.dataset.sent; }, 8000);
    }
  });
  window.addEventListener('pageshow', () => {
    document.querySelectorAll('form[data-sent]').forEach(form => { delete form.dataset.sent; });
  });

  // What a phone keeps of sheets for reading without signal goes with its user. While something is unsent it asks first, and
  // takes nothing away: neither what is to be sent nor the page that it can be read on.
  const isUnsent = signer => {
    try {
      return Object.keys(localStorage).some(key => key.startsWith('eaveside.sheet.' + signer));
    } catch (e) {
      return false; // nowhere to keep anything, so nothing is kept
    }
  };
  document.addEventListener('submit', async event => {
    const form = event.target;
    if (!form.action.endsWith('/sign-out')) return;
    event.preventDefault();
    event.stopPropagation();
    const unsent = isUnsent(form.dataset.signer);
    if (unsent && navigator.onLine && !confirm(form.dataset.unsent)) return;
    const answer = await fetch(form.action, { method: 'POST', redirect: 'manual' }).catch(() => null);
    if (!answer || answer.type !== 'opaqueredirect') { alert(form.dataset.offline); return; }
    if (!unsent && window.caches) await caches.delete('eaveside-sheets');
    location.assign('/sign-in');
  }, true);

  // Numbers as the company writes them, which the form says; no number where the server would find none either.
  const numbers = {
    read: input => {
      const { decimal, group } = input.form.dataset;
      const quoted = sign => sign.trim() ? '\\' + sign : '\\s';
      const text = input.value.trim();
      const like = `^(\\d+|[1-9]\\d{0,2}(${quoted(group)}\\d{3})+)?(${quoted(decimal)}\\d+)?$`;
      if (!new RegExp(like).test(text)) return NaN;
      return Number(text.replace(new RegExp(quoted(group), 'g'), '').replace(decimal, '.'));
    },
    write: (input, number) => { input.value = String(number).replace('.', input.form.dataset.decimal); },
  };
  window.numbers = numbers;

  // Steppers: buttons around a number field, for thumbs.
  document.addEventListener('click', event => {
    const button = event.target.closest('button[data-step]');
    if (!button) return;
    const input = document.getElementById(button.dataset.for);
    const now = numbers.read(input) || 0;
    numbers.write(input, Math.max(0, Math.round((now + Number(button.dataset.step)) * 1e6) / 1e6));
    input.dispatchEvent(new Event('input', { bubbles: true }));
    input.dispatchEvent(new Event('change', { bubbles: true }));
  });

  // Rows that a form can have more of: the last one is copied, empty, with the next number.
  document.addEventListener('click', event => {
    const button = event.target.closest('button[data-add-row]');
    if (!button) return;
    const rows = document.querySelectorAll(button.dataset.addRow);
    const last = rows[rows.length - 1];
    const copy = last.cloneNode(true);
    const number = Number(last.dataset.row) + 1;
    copy.dataset.row = String(number);
    copy.querySelectorAll('[id],[name],[for],[aria-describedby]').forEach(element => {
      for (const name of ['id', 'name', 'for', 'aria-describedby']) {
        const value = element.getAttribute(name);
        if (value) element.setAttribute(name, value.replace(/-\d+-(?!.*-\d+-)/, `-${number}-`));
      }
    });
    copy.querySelectorAll('.error').forEach(element => element.remove());
    copy.querySelectorAll('[aria-invalid]').forEach(element => {
      element.removeAttribute('aria-invalid');
      element.removeAttribute('aria-describedby');
    });
    copy.querySelectorAll('input:not([type=hidden]),textarea').forEach(input => {
      if (input.type === 'checkbox' || input.type === 'radio') input.checked = false; else input.value = '';
    });
    copy.querySelectorAll('select').forEach(select => { select.selectedIndex = 0; });
    last.after(copy);
    const first = copy.querySelector('input:not([type=hidden]),select,textarea');
    if (first) first.focus();
  });
})();
