// Keeps the page's own files, so that it opens at once and without a network. Nothing else is asked for, of nobody.
const files = 'FILES';
const prefix = `fitcheck ${registration.scope} `, here = prefix + 'VERSION';

addEventListener('install', event => event.waitUntil(
  caches.open(here).then(cache => cache.addAll(files.map(file => new Request(file, { cache: 'no-cache' }))))));

addEventListener('activate', event => event.waitUntil(
  caches.keys().then(names => Promise.all(names.filter(n => n.startsWith(prefix) && n !== here).map(n => caches.delete(n))))));

addEventListener('fetch', event => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin) return;
  const asked = url.href.split(/[?#]/)[0].replace(/\/index\.html$/, '/');
  event.respondWith(caches.open(here).then(cache => cache.match(asked)).then(kept => kept ?? fetch(event.request)));
});
