// What forms can't do: keep the work over a reload, carry it in a link, take a dropped file, tell progress. No other state lives here.
(() => {
  'use strict';
  const kept = 'fitcheck';
  const stateful = ['text', 'past', 'future', 'place', 'slot', 'side', 'other', 'file'];
  const form = () => document.getElementById('build');
  const field = (name) => form().elements.namedItem(name);
  const say = document.getElementById('say');

  const press = (value) => {
    const button = document.createElement('button');
    [button.name, button.value, button.hidden] = ['do', value, true];
    form().append(button);
    form().requestSubmit(button);
    button.remove();
  };

  // Kept in this tab alone.
  const keep = () => {
    try {
      sessionStorage.setItem(kept, JSON.stringify({ begun, ...Object.fromEntries(stateful.map((name) => [name, field(name).value])) }));
    } catch {
      // Without storage, or too much for it: a reload begins anew.
    }
  };

  const restore = () => {
    try {
      return JSON.parse(sessionStorage.getItem(kept));
    } catch {
      return null;
    }
  };

  const [begun, earlier] = [field('text').value, restore()];

  const put = (state) => {
    for (const name of stateful) {
      if (typeof state[name] === 'string') field(name).value = state[name];
    }
    press('resume');
  };

  const packed = async (text) => {
    const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
    const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
    let letters = '';
    for (const byte of bytes) letters += String.fromCharCode(byte);
    return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
  };

  const unpacked = async (word) => {
    const letters = atob(word.replaceAll('-', '+').replaceAll('_', '/'));
    const stream = new Blob([Uint8Array.from(letters, (l) => l.charCodeAt(0))]).stream()
      .pipeThrough(new DecompressionStream('deflate-raw'));
    // A small link could hold very much.
    const reader = stream.getReader();
    const parts = [];
    for (let length = 0; ;) {
      const { done, value } = await reader.read();
      if (done) break;
      length += value.length;
      if (length > 4_000_000) throw new Error('too large');
      parts.push(value);
    }
    return new Blob(parts).text();
  };

  const begin = async () => {
    const link = /^#build=([\w-]+)$/.exec(location.hash);
    if (link) {
      history.replaceState(null, '', location.pathname + location.search);
      try {
        put({ text: await unpacked(link[1]), past: '', future: '', place: '', slot: '', side: '' });
        return;
      } catch {
        say.textContent = 'The link is damaged; the build in it can’t be read.';
      }
    }
    // A reload brings what the page began with: nothing, or the build that it was started with.
    if (earlier && (earlier.text || earlier.past) && begun === (earlier.begun ?? '')) put(earlier);
  };

  // The verdict is told once for each change of it, whatever else was drawn anew.
  let told = '';
  const shown = () => {
    document.title = document.getElementById('page').dataset.title;
    const now = [document.getElementById('verdict')?.textContent, document.getElementById('moved')?.textContent].filter(Boolean).join(' ');
    if (now !== told) say.textContent = told = now;
    const link = document.getElementById('link');
    if (link) link.hidden = !('CompressionStream' in window) || !field('text').value;
    keep();
  };

  // Progress of a search, and its end before time.
  let asking = null;
  const askProgress = (job) => {
    clearInterval(asking);
    const stop = document.getElementById('stop');
    if (stop) stop.hidden = false;
    asking = setInterval(async () => {
      const line = document.getElementById('progress');
      if (!line) {
        clearInterval(asking);
        return;
      }
      try {
        const answer = await fetch(`progress?job=${encodeURIComponent(job)}`, { cache: 'no-store' });
        if (answer.ok && asking) line.textContent = await answer.text() || 'Looking …';
      } catch {
        // Told by the search itself.
      }
    }, 400);
  };
  const endProgress = () => {
    clearInterval(asking);
    asking = null;
    const stop = document.getElementById('stop');
    if (stop) stop.hidden = true;
    const line = document.getElementById('progress');
    if (line) line.textContent = '';
  };

  document.addEventListener('click', (event) => {
    const place = event.target.closest?.('a[data-place]');
    if (place) {
      event.preventDefault();
      press(`place:${place.dataset.place}`);
      return;
    }
    const button = event.target.closest?.('button');
    if (button?.hasAttribute('data-job')) {
      const job = Math.random().toString(36).slice(2, 12);
      field('job').value = job;
      askProgress(job);
    } else if (button?.id === 'stop') {
      htmx.trigger(document.getElementById('look'), 'htmx:abort');
      endProgress();
      say.textContent = 'Stopped.';
    } else if (button?.id === 'link') {
      copyLink();
    }
    // Before anything takes the form as it stands: the job is sent with it.
  }, { capture: true });

  const copyLink = async () => {
    const address = `${location.origin}${location.pathname}#build=${await packed(field('text').value)}`;
    try {
      await navigator.clipboard.writeText(address);
      say.textContent = 'The link is copied; it holds the whole build.';
      document.getElementById('link').textContent = 'Copied';
    } catch {
      history.replaceState(null, '', address);
      say.textContent = 'The link stands in the address bar; it holds the whole build.';
    }
  };

  document.addEventListener('change', (event) => {
    if (event.target.type === 'file' && event.target.files.length > 0) press(event.target.id === 'quote-file' ? 'quote' : 'open');
  });

  document.addEventListener('keydown', (event) => {
    const writes = event.target.closest?.('input, textarea, select');
    if (writes || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) press('undo');
    else if (key === 'y' || (key === 'z' && event.shiftKey)) press('redo');
    else return;
    event.preventDefault();
  });

  // Searched for while it is typed; a button that is pressed meanwhile comes first.
  let typing = null;
  document.addEventListener('input', (event) => {
    if (event.target.id !== 'sought') return;
    clearTimeout(typing);
    typing = setTimeout(() => press('seek'), 250);
  });
  document.addEventListener('submit', () => clearTimeout(typing), { capture: true });

  // What the browser does by itself: a file that is saved, a paper in a window of its own.
  document.addEventListener('submit', (event) => {
    if (event.submitter?.hasAttribute('data-plain')) event.stopImmediatePropagation();
  }, { capture: true });

  // One after the other: what is pressed next rests on what the press before it brought. Only a search gives way, to the next letters of it.
  let passed = null, running = null;
  const held = [];
  document.addEventListener('submit', (event) => {
    const by = event.submitter;
    if (event.target !== form() || by?.hasAttribute('data-plain')) return;
    const value = by?.name === 'do' ? by.value : 'enter';
    if (running === null || (running === 'seek' && value === 'seek')) {
      passed = value;
      return;
    }
    event.preventDefault();
    event.stopImmediatePropagation();
    held.push(value);
  }, { capture: true });
  const isOfForm = (event) => event.detail?.ctx?.sourceElement?.id === 'build';
  document.addEventListener('htmx:before:request', (event) => {
    if (isOfForm(event)) running = passed;
  });
  for (const end of ['htmx:after:swap', 'htmx:finally:request']) {
    document.addEventListener(end, (event) => {
      if (!isOfForm(event) || running === null) return;
      running = null;
      // Once it is over for everybody.
      setTimeout(() => {
        if (running === null && held.length > 0) press(held.shift());
      });
    });
  }

  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    const [file] = event.dataTransfer?.files ?? [];
    const into = document.getElementById(file && /\.ya?ml$/i.test(file.name) ? 'build-file' : 'quote-file');
    if (!file || !into) return;
    into.files = event.dataTransfer.files;
    into.dispatchEvent(new Event('change', { bubbles: true }));
  });

  document.addEventListener('htmx:after:swap', () => {
    endProgress();
    shown();
  });
  document.addEventListener('htmx:error', () => {
    held.length = 0;
    endProgress();
    say.textContent = 'There was no answer. Is FitCheck still running?';
  });

  document.documentElement.classList.add('scripted');
  // What was kept is looked at before this state is kept in its place.
  begin();
  shown();
})();
