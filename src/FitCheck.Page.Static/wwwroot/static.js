// What a web server does for the page elsewhere: requests go to the engine in a worker beside it, and nowhere else.
(() => {
  const folder = new URL('.', document.baseURI).href;
  const lines = new Map(); // what was last told of a job
  const waiting = [];      // requests in their order; the engine has one at a time
  let engine, spare = null, running = null, count = 0;

  const root = document.documentElement;
  root.dataset.engine = 'loading';

  // An engine in a worker of its own.
  function launched() {
    const made = { worker: new Worker('worker.js', { type: 'module' }), isReady: false };
    made.worker.onmessage = ({ data }) => hear(made, data);
    made.worker.onerror = event => hear(made, { failed: event.message || 'worker.js' });
    return made;
  }

  function hear(from, said) {
    if (from !== engine) {
      if (said.ready) from.isReady = true;
      else if (said.failed && from === spare) dismiss();
    } else if (said.ready) {
      engine.isReady = true;
      root.dataset.engine = 'ready';
      whenThere(() => document.getElementById('loading')?.remove());
      keepForOffline();
      next();
    } else if (said.failed) {
      fail(said.failed);
    } else if (said.line !== undefined) {
      lines.set(said.job, said.line);
    } else if (running?.id === said.id) {
      const done = running;
      running = null;
      lines.delete(done.job);
      dismiss();
      if (said.defect) done.refuse(new Error(said.defect));
      else done.answer(said);
      next();
    }
  }

  function next() {
    if (!engine.isReady || running || waiting.length === 0) return;
    running = waiting.shift();
    const { id, name, fields, files, isPart, job } = running;
    engine.worker.postMessage({ id, name, fields, files, isPart, job });
    // A search lasts; whoever stops it is not to wait for another engine.
    if (name === 'ways') spare ??= launched();
  }

  function dismiss() {
    spare?.worker.terminate();
    spare = null;
  }

  // Nothing stops the engine but its end; another one takes what waits.
  function giveUp(request) {
    const place = waiting.indexOf(request);
    if (place >= 0) waiting.splice(place, 1);
    if (running === request) {
      running = null;
      lines.delete(request.job);
      engine.worker.terminate();
      [engine, spare] = [spare ?? launched(), null];
      next();
    }
  }

  function fail(why) {
    root.dataset.engine = 'failed';
    whenThere(() => {
      const notice = document.getElementById('loading');
      if (!notice) return;
      notice.querySelector('progress')?.remove();
      notice.querySelector('p').textContent =
        `FitCheck could not be loaded (${why}). It needs a browser with WebAssembly; load the page again to try once more.`;
    });
    for (const request of [running, ...waiting.splice(0)]) request?.refuse(new TypeError(why));
    running = null;
  }

  function ask(name, { fields = [], files = [], isPart = false, signal = null }) {
    return new Promise((answer, refuse) => {
      const job = fields.findLast((value, i) => i % 2 === 1 && fields[i - 1] === 'job') ?? '';
      const request = { id: ++count, name, fields, files, isPart, job, answer, refuse };
      const stop = () => {
        giveUp(request);
        refuse(signal.reason ?? new DOMException('It was given up.', 'AbortError'));
      };
      if (signal?.aborted) return stop();
      signal?.addEventListener('abort', stop, { once: true });
      waiting.push(request);
      next();
    });
  }

  // A form's fields and files, as the engine takes them: name and value in turn; field, file name and Base64 in turn.
  async function taken(form) {
    const fields = [], files = [];
    for (const [name, value] of form) {
      if (typeof value === 'string') fields.push(name, value);
      else if (value.name || value.size) files.push(name, value.name, await base64(value));
    }
    return { fields, files };
  }

  const base64 = file => new Promise((done, refuse) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result.slice(reader.result.indexOf(',') + 1));
    reader.onerror = () => refuse(reader.error);
    reader.readAsDataURL(file);
  });

  // The last word of an address of ours, or null for any other.
  function nameOf(address) {
    const url = new URL(address, document.baseURI);
    const name = url.origin === location.origin && (url.origin + url.pathname).startsWith(folder)
      ? (url.origin + url.pathname).slice(folder.length) : null;
    return name === 'index.html' ? '' : name;
  }

  const network = window.fetch.bind(window);
  window.fetch = async (input, init) => {
    const request = new Request(input, init);
    const name = nameOf(request.url);
    if (name === 'progress')
      return new Response(lines.get(new URL(request.url).searchParams.get('job')) ?? '', { headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
    if (name === null || (request.method === 'GET' && name !== '')) return network(request);
    const { status, type, saveAs, text } = await ask(name, {
      ...(request.headers.has('Content-Type') ? await taken(await request.formData()) : {}),
      isPart: request.headers.get('HX-Request') === 'true',
      signal: init?.signal ?? request.signal,
    });
    const headers = { 'Content-Type': type };
    if (saveAs) headers['Content-Disposition'] = `attachment; filename*=UTF-8''${encodeURIComponent(saveAs)}`;
    return new Response(text, { status, headers });
  };

  // Forms that no script takes: `data-plain` says that none is to, else the script has its turn first.
  window.addEventListener('submit', event => { if (event.submitter?.hasAttribute('data-plain')) submit(event); }, { capture: true });
  window.addEventListener('submit', event => { if (!event.defaultPrevented) submit(event); });

  async function submit(event) {
    const form = event.target, by = event.submitter;
    const name = nameOf(by?.getAttribute('formaction') ?? form.getAttribute('action') ?? '');
    if (name === null) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    const target = by?.getAttribute('formtarget') ?? form.getAttribute('target');
    const elsewhere = target === '_blank' ? window.open('') : null;
    try {
      const { type, saveAs, text } = await ask(name, await taken(new FormData(form, by)));
      if (saveAs) save(text, type, saveAs);
      else show(text, type, elsewhere);
    } catch (error) {
      elsewhere?.close();
      throw error;
    }
  }

  function save(text, type, name) {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type }));
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  }

  // A whole page takes the place of this one, and going back brings this one again.
  const pages = new Map();
  let shown = 0;

  function show(text, type, elsewhere) {
    const page = new DOMParser().parseFromString(type.startsWith('text/html') ? text : '<pre></pre>', 'text/html');
    if (!type.startsWith('text/html')) page.querySelector('pre').textContent = text;
    if (elsewhere) return fill(elsewhere.document, page);
    keep();
    const before = shown;
    shown = Math.max(before, ...pages.keys()) + 1;
    history.replaceState({ ...history.state, page: before }, '');
    history.pushState({ page: shown }, '');
    fill(document, page);
    scrollTo(0, 0);
  }

  function keep() {
    pages.set(shown, { title: document.title, body: document.body, y: scrollY });
  }

  window.addEventListener('popstate', ({ state }) => {
    const page = pages.get(state?.page ?? 0);
    if (!page || (state?.page ?? 0) === shown) return;
    keep();
    shown = state?.page ?? 0;
    document.title = page.title;
    document.body.replaceWith(page.body);
    scrollTo(0, page.y);
  });

  function fill(there, page) {
    for (const link of page.querySelectorAll('head link[rel=stylesheet]')) {
      if (![...there.querySelectorAll('link')].some(l => l.getAttribute('href') === link.getAttribute('href')))
        there.head.append(there.importNode(link));
    }
    if (there !== document) there.head.append(...[...page.querySelectorAll('head meta[name]')].map(meta => there.importNode(meta)));
    there.title = page.title;
    for (const { name, value } of page.documentElement.attributes) there.documentElement.setAttribute(name, value);
    there.body.replaceWith(there.adoptNode(page.body));
    if (there === document) window.htmx?.process(document.body);
  }

  function keepForOffline() {
    navigator.serviceWorker?.register('sw.js').catch(() => { });
  }

  const whenThere = what => document.readyState === 'loading' ? document.addEventListener('DOMContentLoaded', what, { once: true }) : what();
  engine = launched();
})();
