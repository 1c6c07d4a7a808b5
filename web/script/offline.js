// Keeps the whole page in the browser, so that it opens with the network off. It touches no cache but its
// own: the site around this page, and another copy of this page elsewhere on it, keep theirs.
"use strict";
const shell = new URL(registration.scope).pathname;
const own = "slipfit" + shell + "@";
const cacheName = own + "{{.Version}}";
const files = {{.ResourcesToCache}};

self.addEventListener("install", (event) => {
  const fresh = files.map((file) => new Request(file, { cache: "reload" }));
  event.waitUntil(caches.open(cacheName).then((cache) => cache.addAll(fresh)));
});

// A new edition waits until the user asks for it, or until no page of the old one is open: a page and its
// worker must be of the same edition.
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("activate", (event) => {
  const old = (name) => name.startsWith(own) && name !== cacheName;
  event.waitUntil(
    caches.keys().then((names) => Promise.all(names.filter(old).map((name) => caches.delete(name))))
  );
});

self.addEventListener("fetch", (event) => {
  const request = event.request;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  const wanted = request.mode === "navigate" ? shell : request;
  event.respondWith(
    caches
      .open(cacheName)
      .then((cache) => cache.match(wanted))
      .then((kept) => kept || fetch(request))
  );
});
