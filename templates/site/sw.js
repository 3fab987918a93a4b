// Stands between the pages and the network. What the site is made of comes from
// the cache, so that it works without a network; everything below app/ is asked
// of the program, which runs in a worker of the first window (see worker.js).

"use strict";

const version = "{{.Version}}";
const cacheName = "jarmark-" + version;
const shell = {{.Shell}};

const scope = new URL("./", location).pathname;
const below = (url) => new URL(url).pathname.slice(scope.length);

addEventListener("install", (event) => {
  event.waitUntil(caches.open(cacheName).then((cache) => cache.addAll(shell)));
});

addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) if (name.startsWith("jarmark-") && !name.startsWith(cacheName)) await caches.delete(name);
    await clients.claim();
  })());
});

addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (url.origin !== location.origin || !url.pathname.startsWith(scope)) return;
  const path = below(url);
  if (!path.startsWith("app/")) event.respondWith(cached(event.request));
  else if (/^app\/(static|font)\//.test(path)) event.respondWith(kept(event, path));
  else event.respondWith(asked(event, path));
});

// cached answers with a file of the site. The program comes from the browser's
// own store while it lasts: with it lies the code compiled on the last visit.
async function cached(request) {
  if (request.url.endsWith(".wasm")) {
    const held = await fetch(request.url, { mode: "same-origin", cache: "only-if-cached" }).catch(() => null);
    if (held?.ok) return held;
  }
  const found = await caches.match(request, { ignoreSearch: true, cacheName });
  return found ?? fetch(request);
}

// kept answers with a script, style or typeface of the page, asked for once.
async function kept(event, path) {
  const { request } = event;
  const cache = await caches.open(cacheName);
  const found = await cache.match(request);
  if (found) return found;
  const answer = await ask(event, path);
  if (answer.ok) await cache.put(request, answer.clone());
  return answer;
}

// asked answers from the program. A page opened by itself stands in its frame
// again; a file, such as a PDF, is shown as it is.
async function asked(event, path) {
  const { request } = event;
  const alone = request.mode === "navigate" && request.destination === "document";
  const home = `${scope}#${path.slice("app/".length)}${new URL(request.url).search}`;
  if (alone && request.method !== "GET") return Response.redirect(scope, 303);
  if (alone && !(await outer())) return Response.redirect(home);
  const answer = await ask(event, path);
  if (alone && (answer.headers.get("Content-Type") ?? "").startsWith("text/html")) return Response.redirect(home);
  return answer;
}

// outer is the window whose worker answers: the one looked at, else the latest.
async function outer() {
  const all = await clients.matchAll({ type: "window" });
  const ours = all.filter((c) => c.frameType === "top-level" && new URL(c.url).pathname === scope);
  return ours.find((c) => c.visibilityState === "visible") ?? ours[0];
}

async function ask(event, path) {
  const { request } = event;
  const to = await outer();
  if (!to) return new Response("jarmark is closed: open it again\n", { status: 503 });
  const body = request.method === "GET" || request.method === "HEAD" ? null : await request.arrayBuffer();
  const { port1, port2 } = new MessageChannel();
  let over;
  event.waitUntil(new Promise((resolve) => { over = resolve; })); // a long answer keeps this worker alive
  const answer = new Promise((resolve) => receive(port1, request.signal, resolve, over));
  to.postMessage({ ask: { method: request.method, path: path.slice("app".length) + new URL(request.url).search, headers: [...request.headers], body } }, [port2, ...(body ? [body] : [])]);
  return answer;
}

// receive turns the messages of one answer into a response.
function receive(port, signal, resolve, over) {
  let to;
  const stop = () => { port.postMessage("stop"); over(); };
  signal?.addEventListener("abort", stop);
  const body = new ReadableStream({ start(controller) { to = controller; }, cancel: stop });
  port.onmessage = ({ data }) => {
    if (data.head) {
      const empty = [204, 205, 304].includes(data.head.status);
      resolve(new Response(empty ? null : body, { status: data.head.status, headers: data.head.headers }));
    }
    try {
      if (data.piece) to.enqueue(data.piece);
      if (data.end) to.close();
      if (data.broken) to.error(new Error("the answer broke off"));
    } catch { /* the page went away */ }
    if (data.end || data.broken) { port.close(); over(); }
  };
}
