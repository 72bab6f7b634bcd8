//! The text of the service worker.
//!
//! The worker answers from the one cache of its build first, so that a page never mixes two builds. It does
//! not take over by itself: an open page keeps the build that it started with until it says `SKIP` or is gone.

use super::{Kept, hex};
use sha2::{Digest, Sha256};

/// Its name in the page's folder.
pub(crate) const FILE: &str = "sw.js";

/// The name of the list for the page.
pub(crate) const LIST: &str = "precache.json";

/// The start page is asked for by the address of its folder.
const START: (&str, &str) = ("index.html", "./");

/// How many digits of the hash over all files name a build.
const N_DIGITS: usize = 16;

const BEHAVIOUR: &str = r"
self.addEventListener('install', (event) => {
  // `reload` goes past the browser's own cache; one missing file refuses the whole build.
  const requests = FILES.map(([path]) => new Request(path, { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

self.addEventListener('activate', (event) => {
  const isOld = (name) => name.startsWith(PREFIX) && name !== CACHE;
  event.waitUntil((async () => {
    const names = await caches.keys();
    await Promise.all(names.filter(isOld).map((name) => caches.delete(name)));
    // The page of the first visit works without a network from now on, not only after a reload.
    await self.clients.claim();
  })());
});

self.addEventListener('message', (event) => {
  if (event.data === 'SKIP') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const request = event.request;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});

async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true });
  if (kept) return kept;
  const start = request.mode === 'navigate' ? await cache.match('./') : undefined;
  return start ?? fetch(request);
}
";

/// The address by which the page asks for a file.
pub(crate) fn address(path: &str) -> String {
    let (file, address) = START;
    if path == file { address.to_owned() } else { path.to_owned() }
}

/// The worker for these files.
pub(crate) fn text(kept: &[Kept]) -> String {
    let mut all = Sha256::new();
    let mut list = String::new();
    for file in kept {
        all.update(file.path.as_bytes());
        all.update([0]);
        all.update(file.hash.as_bytes());
        let digits: String = file.hash.chars().take(N_DIGITS).collect();
        let address = serde_json::Value::from(address(&file.path));
        list.extend(["  [", &address.to_string(), ", \"", &digits, "\"],\n"]);
    }
    let build: String = hex(&all.finalize()).chars().take(N_DIGITS).collect();
    format!(
        "// Written by the build (tests/precache); each file with the hash of what it holds.\n\
         const PREFIX = 'putback-';\nconst CACHE = PREFIX + '{build}';\nconst FILES = [\n{list}];\n{BEHAVIOUR}"
    )
}
