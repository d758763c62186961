// Keeps this version whole, or the old one. Nothing is fetched from anywhere else.
//
// Every file but the page itself has a hash in its name, so a file of one version is never taken for
// another's. Each is fetched anew at install, past what the browser keeps, and checked by its SHA-256;
// if one is missing or another version's, nothing is installed and the old version stays. The version
// before is kept beside, for a page that still runs it.
const CACHE = "shortfall-VERSION";
const PAGE = "./";
const FILES = { /* FILES */ };

const hex = (bytes) => [...new Uint8Array(bytes)].map((b) => b.toString(16).padStart(2, "0")).join("");

// A file as the network has it, if it is this version's.
const whole = async (name) => {
  const r = await fetch(new Request(name, { cache: "reload" }));
  if (!r.ok) throw new Error(`${name}: ${r.status}`);
  const body = await r.arrayBuffer();
  const fits = name === PAGE
    ? new TextDecoder().decode(body).includes('name="version" content="VERSION"')
    : hex(await crypto.subtle.digest("SHA-256", body)) === FILES[name];
  if (!fits) throw new Error(`${name} is not of this version`);
  const headers = new Headers(r.headers);
  headers.delete("Content-Encoding");
  headers.delete("Content-Length");
  return new Response(body, { headers });
};

self.addEventListener("install", (e) => e.waitUntil((async () => {
  const names = [PAGE, ...Object.keys(FILES)];
  const all = await Promise.all(names.map(whole));
  const cache = await caches.open(CACHE);
  await Promise.all(names.map((n, i) => cache.put(n, all[i])));
})()));

self.addEventListener("activate", (e) => e.waitUntil((async () => {
  const others = (await caches.keys()).filter((k) => k.startsWith("shortfall-") && k !== CACHE);
  await Promise.all(others.slice(0, -1).map((k) => caches.delete(k)));
  await self.clients.claim();
})()));

// The page says when: never in the middle of a fall or a form.
self.addEventListener("message", (e) => { if (e.data === "take over") self.skipWaiting(); });

const answer = async (request, name) => {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(name);
  if (kept) return kept;
  if (name === PAGE || name in FILES) {
    // Something was lost from the cache: fetched and kept again.
    try {
      const fresh = await whole(name);
      await cache.put(name, fresh.clone());
      return fresh;
    } catch { /* as the network has it */ }
  } else {
    const old = await caches.match(request, { ignoreSearch: true });
    if (old) return old;
  }
  return fetch(request);
};

self.addEventListener("fetch", (e) => {
  const url = new URL(e.request.url);
  const home = new URL(self.registration.scope);
  if (e.request.method !== "GET" || url.origin !== home.origin || !url.pathname.startsWith(home.pathname)) return;
  const path = url.pathname.slice(home.pathname.length);
  const name = path === "" || path === "index.html" ? PAGE : `./${path}`;
  e.respondWith(answer(e.request, name));
});
