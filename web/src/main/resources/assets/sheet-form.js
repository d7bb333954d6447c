// The sheet as a form: rows that are added, what fits the plan, what is missing, photos, and what was kept before.
(() => {
  'use strict';
  const sheet = window.jobSheet;
  if (!sheet || !sheet.form) return;
  const { form, visit, signer, words, newId, photos, waiting, keptOf } = sheet;
  const named = name => document.getElementById(name);
  const make = (tag, text) => { const e = document.createElement(tag); e.textContent = text || ''; return e; };

  const showErrors = errors => {
    document.querySelectorAll('.errors, form .error').forEach(e => e.remove());
    const box = Object.assign(make('div'), { className: 'errors', tabIndex: -1, role: 'alert' });
    const list = make('ul');
    box.append(make('h2', words.mend), list);
    for (const [name, text] of Object.entries(errors)) {
      const line = make('li');
      const field = name && named(name);
      if (field) {
        const link = make('a', text);
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
    copy.querySelectorAll('[aria-invalid]').forEach(e => { e.removeAttribute('aria-invalid'); e.removeAttribute('aria-describedby'); });
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
  // What an older page has kept bears its names: they are those of today from here on.
  const older = new Map(form.dataset.older.split(' ').map(names => names.split('=')));
  const today = name => name.replace(/[A-Za-z]+$/, last => older.get(last) || last);
  const { measures } = form.elements;
  const fill = async fields => {
    const here = measures.value;
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
      else if (value && 'number' in element.dataset && !values.has('numbers')) window.numbers.write(element, value[0]);
      else if (value && element.type !== 'file' && element.name !== 'more') element.value = value[0];
    }
    // The units beside the fields are this page's, whatever they were when the quantities were entered.
    const changed = (values.get('measures') || [''])[0] !== here;
    measures.value = here;
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
    return changed;
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
  const number = input => window.numbers.read(input);
  const rest = (planned, of) => Math.max(0, Math.round((planned - of) * 1e6) / 1e6);
  let justOpened = null;
  // The tap that leaves "done" for "some were skipped" must not close what leaving has just opened.
  form.addEventListener('click', event => {
    const summary = event.target.closest('summary');
    if (summary && justOpened && summary.parentElement === justOpened.details && performance.now() - justOpened.at < 600) {
      event.preventDefault();
    }
  });
  const fit = target => {
    const card = target.closest('[data-line]');
    if (!card || !('number' in target.dataset)) return;
    const planned = Number(card.dataset.planned);
    const done = named(card.dataset.line + 'done');
    const skips = [...card.querySelectorAll('input[name$="-quantity"]')];
    if ([done, ...skips].some(input => Number.isNaN(number(input)))) return;
    if (target !== done) {
      window.numbers.write(done, rest(planned, skips.reduce((sum, s) => sum + number(s), 0)));
    } else if (done.value !== '' && skips.length === 1) {
      window.numbers.write(skips[0], rest(planned, number(done)) || '');
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
    const wrong = (field, text) => {
      errors[field.id] = text.replace('{0}', form.querySelector(`label[for="${field.id}"]`).firstChild.textContent.trim());
    };
    const required = field => wrong(field, words.required);
    form.querySelectorAll('[data-number]').forEach(i => { if (Number.isNaN(number(i))) wrong(i, words.number); });
    form.querySelectorAll('[data-needed]').forEach(i => { if (i.value === '') required(i); });
    form.querySelectorAll('[data-line]').forEach(card => {
      const done = named(card.dataset.line + 'done');
      const skips = [...card.querySelectorAll('input[name$="-quantity"]')].filter(s => number(s) > 0);
      const sum = skips.reduce((all, s) => all + number(s), number(done));
      if (done.value !== '' && Math.abs(sum - Number(card.dataset.planned)) > 1e-6) errors[done.id] = words.differs;
      skips.map(s => named(s.id.replace(/quantity$/, 'reason'))).forEach(r => { if (!r.value) required(r); });
    });
    const uses = { mix: ['mix', 'volume'], brush: ['lot', 'units'], item: ['item', 'quantity'], count: ['item', 'found'] };
    for (const [group, [thing, amount]] of Object.entries(uses)) {
      form.querySelectorAll(`[data-rows="${group}"] > .row`).forEach(row => {
        const [what, much] = [thing, amount].map(name => named(`${group}-${row.dataset.row}-${name}`));
        if (what.value && !much.value) required(much);
        if (!what.value && much.value) required(what);
      });
    }
    form.querySelectorAll('[name^="extra-"][name$="-serviceItem"]').forEach(o => {
      const acceptedBy = named(o.id.replace(/serviceItem$/, 'acceptedBy'));
      if (o.value && !acceptedBy.value.trim()) required(acceptedBy);
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
      const photo = { id: newId(), visit, signer, name: file.name, blob: await shrunk(file) };
      await photos('readwrite', s => s.put(photo));
      addShot(box, photo.id, URL.createObjectURL(photo.blob), true);
    }
    sheet.save(false);
    sheet.chance();
  };

  const open = async () => {
    document.querySelectorAll('[data-plain]').forEach(e => { e.hidden = true; });
    form.querySelectorAll('[data-scripted]').forEach(e => { e.hidden = false; });
    form.noValidate = true;
    const kept = keptOf(visit);
    if (kept) {
      const changed = await fill(kept.fields.map(([name, value]) => [today(name), value]));
      const errors = Object.entries(kept.errors || {}).map(([name, text]) => [today(name), text]);
      if (changed) errors.push(['measures', words.unitsChanged]);
      if (errors.length) showErrors(Object.fromEntries(errors));
    } else if (!form.parentElement.querySelector('.errors')) {
      form.elements.id.value = newId();
    }
    showWhen();
    tidyShots();
    form.addEventListener('input', event => {
      if (event.target.type !== 'file') sheet.save(false);
    });
    form.addEventListener('change', event => {
      if (event.target.type === 'file') { take(event.target); return; }
      fit(event.target);
      showWhen();
      tidyShots();
      sheet.save(false);
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
        sheet.save(false);
      } else if (button.dataset.all) {
        const card = button.closest('[data-line]');
        takeBackSkips(card);
        window.numbers.write(named(button.dataset.all), Number(card.dataset.planned));
        sheet.save(false);
      }
    });
    form.addEventListener('submit', event => {
      event.preventDefault();
      event.stopPropagation();
      document.querySelectorAll('.errors, form .error').forEach(e => e.remove());
      form.querySelectorAll('[aria-invalid]').forEach(e => e.removeAttribute('aria-invalid'));
      const errors = missing();
      const whole = !Object.keys(errors).length;
      sheet.save(whole);
      if (whole) sheet.chance(); else showErrors(errors);
    });
  };

  Object.assign(sheet, { showErrors, open });
})();
