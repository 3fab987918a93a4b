// Runs the Go program beside the page, and hands it the page's requests. What a
// request changed is on the disk before its answer goes out.

import { Files, fault, parts } from "./files.js";
import { Disk } from "./disk.js";
import { Keeper } from "./keeper.js";

const home = "/files"; // where the program finds the maker's folder
const complain = (words) => console.warn(words.trimEnd());

globalThis.fs = new Files(complain);
globalThis.process = {
  getuid: () => 0, getgid: () => 0, geteuid: () => 0, getegid: () => 0, getgroups: () => [], pid: 1, ppid: 0,
  umask: () => 0o022, cwd: () => home, chdir() { throw fault("ENOSYS"); },
};
globalThis.path = { resolve: (...all) => "/" + parts(all.join("/")).join("/") };
fs.mkdir(home, 0o755, () => {});

let disk = new Disk(fs, home, null);
let go; // the running program: {serve, renew, rehearse}
let keeper = null;
let looked = 0; // when the disk was last looked at

// begin mounts the folder and starts the program, both at once.
async function begin({ folder, token, version }) {
  keeper = new Keeper(version, token, () => disk.top(), whole);
  [go] = await Promise.all([start(token), mount(folder)]);
}

async function mount(folder) {
  disk = new Disk(fs, home, folder);
  try {
    await disk.reset();
  } catch (error) {
    disk = new Disk(fs, home, null);
    postMessage({ folderFault: error.message || error.code });
  }
}

// The page names the program in this worker's address. Browsers keep compiled
// code for an answer of fetch alone, not for one taken out of a cache by hand.
const compiled = WebAssembly.compileStreaming(fetch(location.hash.slice(1)));
const runtimeLoaded = import("./wasm_exec.js");
for (const early of [compiled, runtimeLoaded]) early.catch(() => {}); // start tells of it

async function start(token) {
  await runtimeLoaded;
  const runtime = new Go();
  runtime.argv = ["jarmark", home, token];
  runtime.exit = (code) => postMessage({ fault: `the program ended (${code})` });
  const instance = await WebAssembly.instantiate(await compiled, runtime.importObject);
  const ready = new Promise((resolve) => { globalThis.jarmarkReady = resolve; });
  runtime.run(instance).catch((error) => postMessage({ fault: error.message }));
  return ready;
}

const running = new Promise((resolve) => {
  onmessage = ({ data, ports }) => {
    if (data.begin) begin(data.begin).then(() => { resolve(); postMessage({ ready: true }); setTimeout(rehearse, quiet); }, (error) => postMessage({ fault: error.message }));
    else if (data.folder !== undefined) running.then(() => navigator.locks.request("jarmark-files", async () => { await mount(data.folder); go.renew(); keeper.moved(); })).then(() => postMessage({ mounted: true }));
    else if (data.met) running.then(() => keeper.met(data.met));
    else if (data.ask) running.then(() => handle(data.ask, ports[0]));
  };
});

// reads are the requests that change nothing, though they are posted.
const reads = (ask) => ask.method === "GET" || ask.method === "HEAD" || /\/do\/(look|print)$/.test(ask.path);
// still are the addresses whose answer does not hang on the disk.
const still = /^\/(static|font|print)\//;

// rehearse lets the program do once, step by step, what the maker will ask for,
// while nobody asks: tables are read and code is compiled by then.
const quiet = 400; // milliseconds without a question
let asked = 0; // when the last question was answered
let answering = 0; // questions at work
function rehearse() {
  if (answering > 0 || performance.now() - asked < quiet) setTimeout(rehearse, quiet);
  else go.rehearse((more) => { if (more) setTimeout(rehearse); else postMessage({ rehearsed: true }); });
}

async function handle(ask, port) {
  answering++;
  await respond(ask, port).finally(() => { answering--; asked = performance.now(); });
}

// respond answers one request. Writes come one after the other, in all tabs.
async function respond(ask, port) {
  keeper.met(ask);
  if (!reads(ask)) {
    await navigator.locks.request("jarmark-files", async () => { await look(); await answer(ask, port, () => disk.flush()); });
    return keeper.wrote().catch(() => {}); // where nothing can be kept
  }
  if (!still.test(ask.path) && !ask.path.startsWith("/do/look") && performance.now() - looked > 1000) {
    await navigator.locks.request("jarmark-files", { ifAvailable: true }, async (free) => { if (free) await look(); });
  }
  return passed(ask, port);
}

// passed hands on what the program says while it is still at work: what is only
// read waits for no disk.
function passed(ask, port) {
  return new Promise((resolve) => {
    let head = null; // goes out with what follows it
    let sent = false;
    const tell = (message, more) => { if (head) port.postMessage({ head }); head = null; sent = true; port.postMessage(message, more); };
    const stop = go.serve(ask.method, ask.path, JSON.stringify(ask.headers), new Uint8Array(ask.body ?? 0), {
      head: (status, headers) => { head = { status, headers: JSON.parse(headers) }; },
      piece: (bytes) => tell({ piece: bytes }, [bytes.buffer]),
      broken: () => { head = null; if (sent) tell({ broken: true }); else refuse(port, new Error("the program had a fault")); resolve(); },
      end: () => { tell({ end: true }); resolve(); },
    });
    port.onmessage = () => stop(); // nobody waits any more
  });
}

// whole asks the program by itself and waits for all of the answer.
function whole(ask) {
  return new Promise((resolve, reject) => {
    let head = null;
    const pieces = [];
    go.serve(ask.method, ask.path, JSON.stringify(ask.headers), new Uint8Array(ask.body ?? 0), {
      head: (status, headers) => { head = { status, headers: JSON.parse(headers) }; },
      piece: (bytes) => pieces.push(bytes),
      broken: () => reject(new Error("the program had a fault")),
      end: () => resolve({ ...head, body: new Blob(pieces) }),
    });
  });
}

async function look() {
  await disk.look().catch((error) => complain(`the folder could not be read again: ${error.message}`));
  looked = performance.now();
}

// answer passes on what the program says, piece by piece, each after flush.
function answer(ask, port, flush) {
  return new Promise((resolve) => {
    let sent = false;
    let line = Promise.resolve();
    const tell = (message, more) => { sent = true; port.postMessage(message, more); };
    const after = (then) => {
      line = line.then(flush).then(then).catch(async (error) => {
        if (line.over) return;
        line.over = true;
        await disk.reset().catch(() => {});
        if (sent) port.postMessage({ broken: true });
        else refuse(port, error);
        resolve();
      });
    };
    let head = null; // goes out with what follows it, when that is on the disk
    const stop = go.serve(ask.method, ask.path, JSON.stringify(ask.headers), new Uint8Array(ask.body ?? 0), {
      head: (status, headers) => { head = { status, headers: JSON.parse(headers) }; },
      piece: (bytes) => { const h = head; head = null; after(() => { if (h) tell({ head: h }); tell({ piece: bytes }, [bytes.buffer]); }); },
      broken: () => after(() => { throw new Error("the program had a fault"); }),
      end: () => { const h = head; head = null; after(() => { if (h) tell({ head: h }); tell({ end: true }); resolve(); }); },
    });
    port.onmessage = () => stop(); // nobody waits any more
  });
}

function refuse(port, error) {
  const full = error.name === "QuotaExceededError" || error.code === "ENOSPC";
  const words = { error: full ? "there is no room left in the browser for your files; nothing was changed" : `the folder could not be written (${error.message}); nothing was changed`, hint: full ? "take your files out as a zip, then make room" : "open the folder again with the button at the top" };
  const piece = new TextEncoder().encode(JSON.stringify(words));
  port.postMessage({ head: { status: 507, headers: [["Content-Type", "application/json"]] } });
  port.postMessage({ piece }, [piece.buffer]);
  port.postMessage({ end: true });
}
