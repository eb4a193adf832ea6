// Service worker: all files of one version in one cache, so that the app opens without a network and never
// mixes two versions. A new version is fetched whole beside the old one and takes over when no page uses the
// old one any more. The build fills in version and files.
'use strict';

const kVersion = 'lanternleaf-@VERSION@';
const kFiles = [/*FILES*/];

self.addEventListener('install', (event) => {
    event.waitUntil(caches.open(kVersion).then((cache) =>
        cache.addAll(kFiles.map((file) => new Request(file, {cache: 'no-cache'})))));
});

self.addEventListener('activate', (event) => {
    event.waitUntil(caches.keys()
        .then((names) => Promise.all(names.filter((name) => name.startsWith('lanternleaf-') && name !== kVersion)
            .map((name) => caches.delete(name))))
        .then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
    if (event.request.method !== 'GET' || new URL(event.request.url).origin !== self.location.origin) {
        return;
    }
    event.respondWith(caches.open(kVersion)
        .then((cache) => cache.match(event.request, {ignoreSearch: true, ignoreVary: true}))
        .then((kept) => kept || fetch(event.request)));
});
