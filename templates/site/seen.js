// Answers kept from one visit to the next, so that a page opened again shows
// the maker's own labels before the program is there. An answer is found again
// by all it hangs on: the version of the site, the day, the secret of the
// page, and every byte of the folder that a page can read. So what is shown is
// what the program would say: of another file, another day or another program
// nothing is found. Answers lie in this browser alone, as the files do, and
// only those of the folder as it is now.

const most = { files: 500, bytes: 16e6, answers: 6, answer: 4e6 };
const pages = /^\/(batch\/[^/?]+|kitchen)$/;

export const isPage = (ask) => ask.method === "GET" && pages.test(ask.path);

// lookOf gives what a page just opened asks to see, when that is what is asked.
export function lookOf(ask) {
  if (ask.method !== "POST" || ask.path !== "/do/look") return null;
  try {
    const look = JSON.parse(new TextDecoder().decode(ask.body));
    return look.changes.length === 0 && look.have.length === 0 && !look.form ? look : null;
  } catch { return null; }
}

// counts tells which files a page can read: not the results, and of the folder
// itself no hidden files (TestOpeningHangsOnFilesAlone of internal/app/web).
export const counts = (path) => path !== "out" && !path.startsWith(".");

export function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].join("-");
}

export class Seen {
  constructor(version, token) { Object.assign(this, { name: `jarmark-${version}-seen`, version, token }); }

  // mark is the name of a folder's state: files are {path, size, bytes()}; null
  // when there are too many to look at.
  async mark(files, day = today()) {
    if (files.length > most.files || files.reduce((n, f) => n + f.size, 0) > most.bytes) return null;
    const sums = await Promise.all(files.map(async (f) => [f.path, await sum(await f.bytes())]));
    return sum(text([this.version, this.token, day, sums.sort(([a], [b]) => (a < b ? -1 : 1))]));
  }

  // recall gives the answer kept for a question, if there is one.
  async recall(mark, ask) {
    if (!mark || !isPage(ask) && !lookOf(ask)) return null;
    return (await (await caches.open(this.name)).match(await at(mark, ask))) ?? null;
  }

  // keep holds answers given to questions, and drops those of other states.
  async keep(mark, answers) {
    await this.prune(mark);
    if (!mark) return;
    const cache = await caches.open(this.name);
    for (const { ask, status, headers, body } of answers) {
      if (status === 200 && body.size <= most.answer) await cache.put(await at(mark, ask), new Response(body, { headers }));
    }
    for (const old of (await cache.keys()).slice(0, -most.answers)) await cache.delete(old);
  }

  async prune(mark) {
    if (!mark) return this.forget();
    const cache = await caches.open(this.name);
    for (const request of await cache.keys()) if (!request.url.includes(`/${mark}/`)) await cache.delete(request);
    return undefined;
  }

  async forget() { await caches.delete(this.name); }
}

// onDisk lists the files of a folder as mark wants them.
export async function onDisk(folder, at = "", out = []) {
  for await (const [name, handle] of folder.entries()) {
    const path = at + name;
    if (!counts(path)) continue;
    if (out.length > most.files) break;
    if (handle.kind === "directory") await onDisk(handle, `${path}/`, out);
    else {
      const file = await handle.getFile();
      out.push({ path, size: file.size, bytes: () => file.arrayBuffer() });
    }
  }
  return out;
}

const text = (value) => new TextEncoder().encode(JSON.stringify(value));

async function sum(bytes) {
  return Array.from(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)), (b) => b.toString(16).padStart(2, "0")).join("");
}

// at is the address an answer is kept at; nothing is ever asked there.
async function at(mark, { method, path, body }) {
  return new URL(`seen/${mark}/${await sum(text([method, path, body ? await sum(body) : ""]))}`, self.location.href.replace(/[^/]*([?#].*)?$/, "")).href;
}
