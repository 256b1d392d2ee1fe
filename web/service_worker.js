// Keeps the files of one build in the browser, so that the page opens without a network and never mixes two versions.
// `web/write_service_worker.mjs` writes two names before this, after each build: `version`, and `files`, by path the
// SHA-256 of each file. A new version is fetched whole and waits until every window of the page is closed, or until a
// person asks for it.
const scope = self.registration.scope;
const shelf = `hobnail ${scope} `;
const own = shelf + version;
const addressOf = (path) => new URL(path, scope).href;
const addresses = new Set(Object.keys(files).map(addressOf));

// A file as the build made it; anything else would be of another version, or broken.
async function fetchWhole(path) {
  const answer = await fetch(addressOf(path), { cache: "no-cache" });
  const bytes = await answer.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  const found = [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  if (!answer.ok || found !== files[path]) throw new Error(`${path} is not as it was built`);
  return new Response(bytes, { headers: answer.headers });
}

async function fetchAll() {
  const cache = await caches.open(own);
  await Promise.all(Object.keys(files).map(async (path) => cache.put(addressOf(path), await fetchWhole(path))));
}

async function clear() {
  const names = await caches.keys();
  const others = names.filter((name) => name.startsWith(shelf) && name !== own);
  await Promise.all(others.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(address, request) {
  const cache = await caches.open(own);
  // A browser that needs room may have dropped the file.
  return (await cache.match(address)) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(fetchAll()));

self.addEventListener("activate", (event) => event.waitUntil(clear()));

self.addEventListener("message", (event) => {
  if (event.data === "use") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const asked = new URL(event.request.url);
  const plain = asked.origin + asked.pathname;
  const address = plain === addressOf("index.html") ? scope : plain;
  if (event.request.method === "GET" && addresses.has(address)) event.respondWith(answer(address, event.request));
});
