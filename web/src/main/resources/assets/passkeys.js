// Asks this browser's authenticators for a passkey, or for a new one, and sends the answer with the form that asked.
// A form says what it wants by data-passkey (get or make) and where its question comes from by data-question.
'use strict';
(() => {
  const FLAWS = 'The passkey could not be used. Try again, or use the password.';
  const HAS_ONE = 'This device has a passkey for you already. Use that one, or add one on another device.';
  const bytes = text => Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), c => c.charCodeAt(0));
  const text = buffer =>
    btoa(String.fromCharCode(...new Uint8Array(buffer))).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
  const known = list => (list || []).map(one => ({ ...one, id: bytes(one.id) }));

  function asked(options) {
    const all = { ...options, challenge: bytes(options.challenge) };
    if (options.user) all.user = { ...options.user, id: bytes(options.user.id) };
    if (options.excludeCredentials) all.excludeCredentials = known(options.excludeCredentials);
    if (options.allowCredentials) all.allowCredentials = known(options.allowCredentials);
    return all;
  }

  function answer(credential) {
    const said = credential.response;
    const response = { clientDataJSON: text(said.clientDataJSON) };
    if (said.attestationObject) {
      response.attestationObject = text(said.attestationObject);
      response.transports = said.getTransports ? said.getTransports() : [];
    } else {
      response.authenticatorData = text(said.authenticatorData);
      response.signature = text(said.signature);
      if (said.userHandle) response.userHandle = text(said.userHandle);
    }
    return JSON.stringify({
      id: credential.id,
      rawId: text(credential.rawId),
      type: credential.type,
      authenticatorAttachment: credential.authenticatorAttachment || undefined,
      clientExtensionResults: credential.getClientExtensionResults(),
      response,
    });
  }

  async function send(form) {
    const told = form.querySelector('[data-flaw]');
    told.textContent = '';
    form.querySelector('button').disabled = true;
    try {
      const question = await fetch(form.dataset.question, {
        method: 'POST',
        headers: { 'Content-Type': 'application/x-www-form-urlencoded', Accept: 'application/json' },
        body: new URLSearchParams(new FormData(form)),
      });
      const said = await question.json();
      if (!question.ok) throw new Error(said.title);
      const publicKey = asked(said.options.publicKey);
      const credential = form.dataset.passkey === 'make'
        ? await navigator.credentials.create({ publicKey })
        : await navigator.credentials.get({ publicKey });
      form.elements.question.value = said.question;
      form.elements.credential.value = answer(credential);
      form.submit();
    } catch (flaw) {
      told.textContent = flaw.name === 'InvalidStateError' ? HAS_ONE : flaw.name === 'Error' ? flaw.message : FLAWS;
      form.querySelector('button').disabled = false;
    }
  }

  // Passkeys are made for names: at an address of numbers there are none.
  const named = !/^[\d.]+$|:/.test(location.hostname);
  if (window.PublicKeyCredential && window.isSecureContext && named) {
    for (const form of document.querySelectorAll('form[data-passkey]')) {
      form.hidden = false;
      form.addEventListener('submit', event => {
        event.preventDefault();
        send(form);
      });
    }
    for (const note of document.querySelectorAll('[data-no-passkeys]')) note.hidden = true;
  }
})();
