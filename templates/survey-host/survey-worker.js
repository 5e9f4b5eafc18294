/* Beside the survey page on a host: keeps the page on the phone, so that it opens without a network from then on. Another
 * page, which has another mark, takes the place of this one when it is opened next. It keeps nothing of a survey. */
const KEPT = 'wend-survey-WEND-MARK';
const FILES = ['./', 'index.html', 'survey.webmanifest', 'survey-icon.svg'];
self.addEventListener('install', event => event.waitUntil(
    caches.open(KEPT).then(kept => kept.addAll(FILES.map(file => new Request(file, {cache: 'reload'}))))));
self.addEventListener('activate', event => event.waitUntil(
    caches.keys().then(names => Promise.all(
        names.filter(name => name.startsWith('wend-survey-') && name !== KEPT).map(name => caches.delete(name))))));
self.addEventListener('fetch', event => {
    if (event.request.method === 'GET') {
        event.respondWith(caches.open(KEPT).then(kept => kept.match(event.request, {ignoreSearch: true}))
            .then(found => found ?? fetch(event.request)));
    }
});
