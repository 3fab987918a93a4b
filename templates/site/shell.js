// The outer page: starts the program in a worker and the service worker that
// leads to it, shows the page in a frame, and keeps the maker's folder.

import { folders, saveAs } from "./folders.js";
import { Seen, onDisk } from "./seen.js";

const byId = (id) => document.getElementById(id);
const { version, program } = document.documentElement.dataset;
const scope = new URL("./", location).pathname;
const frame = byId("page");

// The program starts at once, but where labels kept of the last visit are to
// be shown: there it would only stand in their way, and starts after them.
let start;
const started = new Promise((resolve) => { start = resolve; }).then(() => {
  const worker = new Worker(`worker.js#${program}`, { type: "module", name: "jarmark" });
  worker.onmessage = ({ data }) => {
    if (data.ready) isReady();
    if (data.mounted) reload();
    if (data.rehearsed) document.documentElement.dataset.rehearsed = "yes";
    if (data.fault) trouble(data.fault);
    if (data.folderFault) places.failed(data.folderFault);
  };
  worker.onerror = (event) => trouble(event.message || "the program could not be loaded");
  return worker;
});
let isReady;
const ready = new Promise((resolve) => { isReady = resolve; });
// post keeps the order of what is posted.
const post = (...message) => started.then((worker) => worker.postMessage(...message));

let seen = null; // what is kept from one visit to the next
let kept = null; // until the program is there: a promise of the folder's mark in it

const places = folders({ use, reload, app: `${scope}app/` });

// use lets the program go on in another folder; of the one before nothing stays.
async function use(folder) {
  await known;
  kept = null;
  await seen.forget().catch(() => {});
  start();
  post({ folder });
}

function trouble(words) {
  delete document.documentElement.dataset.shown;
  byId("start").hidden = false;
  byId("wait").textContent = `jarmark could not start: ${words}. Load the page again; when that does not help, try another browser.`;
}

// controlled waits until this page's requests go through the service worker.
async function controlled() {
  if (!navigator.serviceWorker) throw new Error("this browser cannot keep a page (no service worker): open it over https, and not in a private window");
  navigator.serviceWorker.onmessage = ({ data, ports }) => { if (data.ask) passOn(data.ask, ports[0]); };
  navigator.serviceWorker.startMessages();
  const registered = navigator.serviceWorker.register("sw.js", { scope: "./", updateViaCache: "none" });
  if (!navigator.serviceWorker.controller) {
    const held = new Promise((resolve) => navigator.serviceWorker.addEventListener("controllerchange", resolve, { once: true }));
    await registered;
    if (!navigator.serviceWorker.controller) await held;
  } else registered.catch(() => {}); // without a network the one at work goes on
}

// passOn gives a question the answer kept of the last visit, else hands it to
// the program. After the first write nothing is taken from the last visit.
async function passOn(ask, port) {
  const answer = await recalled(ask).catch(() => null);
  if (!answer) {
    if (!harmless(ask)) kept = null;
    start(); // somebody waits for it
    return post({ ask }, [port, ...(ask.body ? [ask.body] : [])]);
  }
  const piece = new Uint8Array(await answer.arrayBuffer());
  port.postMessage({ head: { status: answer.status, headers: [...answer.headers] } });
  port.postMessage({ piece }, [piece.buffer]);
  port.postMessage({ end: true });
  post({ met: ask });
  if (ask.path === "/do/look") looked();
  return document.documentElement.dataset.seen = "yes";
}

const harmless = (ask) => ask.method === "GET" || ask.path === "/do/look";

async function recalled(ask) {
  await known;
  const mark = await kept;
  return kept && seen.recall(mark, ask);
}

// markOf looks at the folder, and drops what was kept of it as it was before.
async function markOf(folder) {
  const mark = folder && await seen.mark(await onDisk(folder));
  await seen.prune(mark);
  return mark;
}

// keep stores the program for times without a network.
async function keep() {
  const cache = await caches.open(`jarmark-${version}`);
  if (!await cache.match(program)) await cache.add(program);
  document.documentElement.dataset.kept = "yes";
  byId("kept").hidden = false;
}

const pageOf = (hash) => new URL(`app/${hash.slice(1).replace(/^\/+/, "")}`, location.origin + scope);
function show(hash) { frame.contentWindow.location.replace(pageOf(hash)); }
function reload() { if (frame.contentWindow.location.href !== "about:blank") frame.contentWindow.location.reload(); }

// follow keeps the address and the title in step with the frame.
function follow() {
  const { location: at, document: page } = frame.contentWindow;
  if (!at.pathname.startsWith(`${scope}app/`)) return;
  const path = at.pathname.slice(`${scope}app/`.length) + at.search;
  if (path !== location.hash.slice(1)) history.replaceState(null, "", path ? `#${path}` : scope);
  document.title = page.title;
  page.addEventListener("click", fetchFile, true);
  catchClicks(frame.contentWindow.HTMLAnchorElement.prototype);
  document.documentElement.dataset.shown = "yes";
  byId("start").hidden = true;
}

// fetchFile takes a link to a file: browsers do not ask a service worker for
// what is to be downloaded.
async function fetchFile(event) {
  const link = event.target.closest?.("a[download]");
  if (!link || link.protocol === "blob:") return;
  event.preventDefault();
  await download(link);
}

// catchClicks does the same for links that stand on no page, clicked by a script.
function catchClicks(links) {
  const { click } = links;
  links.click = function caught() {
    if (this.hasAttribute("download") && this.protocol !== "blob:") download(this);
    else click.call(this);
  };
}

async function download(link) {
  const answer = await fetch(link.href);
  if (answer.ok) saveAs(await answer.blob(), link.download || decodeURIComponent(link.pathname.split("/").pop()));
}

frame.addEventListener("load", follow);
// The event knows the address that was asked for: meanwhile follow may have
// written that of a page that was still loading.
addEventListener("hashchange", (event) => show(new URL(event.newURL).hash));

// looked: the labels kept are handed out; the program starts when they are drawn.
function looked() { requestAnimationFrame(() => setTimeout(start, drawing)); }
const drawing = 50; // milliseconds a label takes to the screen
const patience = 1500; // milliseconds until the program starts in any case

// known: the folder of the last visit, the page's secret, and what is kept of both.
const known = (async () => {
  const [folder, token] = await Promise.all([places.last(), places.token()]);
  post({ begin: { folder, token, version } });
  seen = new Seen(version, token);
  kept = markOf(folder).catch(() => null);
})();

(async () => {
  const before = caches.has(`jarmark-${version}-seen`).catch(() => false);
  const reached = controlled();
  const again = Boolean(navigator.serviceWorker?.controller) && await before;
  if (again) { // what is not kept waits for the program
    show(location.hash);
    setTimeout(start, patience);
  } else start();
  try {
    await reached;
  } catch (error) { return trouble(error.message); }
  await known;
  await ready;
  kept = null;
  if (!again) show(location.hash);
  await keep().catch(() => {});
})();
