/* Keeps the program and the opened class pages on the phone. The server fills in version and list.
   Version: one cache for each; the old ones go when the new worker takes over.
   A new version waits until no page is open, or until a page says "take over": nothing is pulled from under anyone. */

const PREFIX = "heatside-";
const VERSION = "__VERSION__";
const CACHE = PREFIX + VERSION;
const PRECACHE = ["__PRECACHE__"];
const KEPT_PATHS = /^\/w\/[^/]+(\/warm-up|\/words\/[^/]+\.json)?$/;
const ANY_VARIANT = { ignoreVary: true };  // the address says the language
const NEVER = /^\/(c\/|new|health)|\/json$/;

// Without cookies: fetching a page in every language must not change the language the person chose.
const fresh = (address) => new Request(address, { cache: "reload", credentials: "omit" });

/** Good to keep: no error, no redirect, and a page only if it names the files of this very version. */
async function isKeepable(response) {
  if (!response.ok || response.redirected || response.type !== "basic") return false;
  const isPage = response.headers.get("Content-Type")?.startsWith("text/html");
  return !isPage || (await response.clone().text()).includes(`/static/${VERSION}/`);
}

/** Fetch and store; the answer says whether every address could be kept. */
async function keep(cache, addresses) {
  const stored = await Promise.all(addresses.map(async (address) => {
    const response = await fetch(fresh(address));
    if (!(await isKeepable(response))) return false;
    await cache.put(address, response);
    return true;
  }));
  return stored.every(Boolean);
}

/** Class pages name the files of their own version, so a new version brings them anew. */
async function keptAddresses() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  const lists = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
  const urls = lists.flat().map((request) => new URL(request.url)).filter((url) => KEPT_PATHS.test(url.pathname));
  return [...new Set(urls.map((url) => url.pathname + url.search))];
}

async function install() {
  const cache = await caches.open(CACHE);
  await cache.addAll(PRECACHE.map(fresh));
  await keep(cache, await keptAddresses());
}

async function activate() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** A page chosen by language becomes the one its plain address opens, so the choice holds with no connection. */
async function rememberLanguage(cache, url, response) {
  if (response && KEPT_PATHS.test(url.pathname) && url.searchParams.has("lang")) await cache.put(url.pathname, response.clone());
}

/** Keep a class: only what is missing, unless it is to be brought anew, since nobody is forced to a newer revision. */
async function keepClass({ addresses, shown, anew }) {
  const cache = await caches.open(CACHE);
  const has = await Promise.all(addresses.map((address) => cache.match(address, ANY_VARIANT)));
  const kept = await keep(cache, anew ? addresses : addresses.filter((_, index) => !has[index]));
  await rememberLanguage(cache, new URL(shown, location.origin), await cache.match(shown, ANY_VARIANT));
  return kept;
}

async function answer(request) {
  const url = new URL(request.url);
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, ANY_VARIANT);
  if (kept) {
    if (request.mode === "navigate") await rememberLanguage(cache, url, kept);
    return kept;
  }
  try {
    const response = await fetch(request);
    if (KEPT_PATHS.test(url.pathname) && (await isKeepable(response))) await cache.put(request, response.clone());
    return response;
  } catch (error) {
    if (request.mode !== "navigate") throw error;
    return (await cache.match(url.pathname, ANY_VARIANT)) ?? (await cache.match("/offline")) ?? Response.error();
  }
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin || NEVER.test(url.pathname)) return;
  event.respondWith(answer(event.request));
});
self.addEventListener("message", (event) => {
  if (event.data.ask === "take over") self.skipWaiting();
  if (event.data.ask !== "keep") return;
  event.waitUntil(keepClass(event.data).catch(() => false).then((kept) => event.ports[0].postMessage({ kept })));
});
