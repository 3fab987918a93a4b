// Carries files between memory and a folder of the browser: its private one
// (OPFS), or one the maker picked. Memory is written after each request that
// changed something; a folder other programs write in is read again before.

import { Node, fault } from "./files.js";

const most = 50_000; // files and folders; a folder that big is no jam kitchen

export class Disk {
  // folder is a FileSystemDirectoryHandle; null keeps everything in memory.
  constructor(files, home, folder) {
    Object.assign(this, { files, home, folder, seen: new Map() }); // seen: path -> what lies on the disk
  }

  top() { return this.files.find(this.home); }

  // look takes over what changed on the disk since it was last read or written.
  async look() {
    if (!this.folder) return;
    const now = new Map();
    await this.list(this.folder, "", now);
    for (const path of [...this.seen.keys()].reverse()) {
      if (!now.has(path) || now.get(path).kind !== this.seen.get(path).kind) this.forget(path);
    }
    for (const [path, entry] of now) this.take(path, entry);
  }

  async list(folder, at, out) {
    for await (const [name, handle] of folder.entries()) {
      if (out.size >= most) throw fault("ENOSPC");
      const path = at + name;
      if (handle.kind === "directory") {
        out.set(path, { kind: "dir", handle });
        await this.list(handle, path + "/", out);
      } else {
        const file = await handle.getFile().catch(() => null); // gone meanwhile
        if (file) out.set(path, { kind: "file", handle, mtime: file.lastModified, size: file.size });
      }
    }
  }

  forget(path) {
    this.seen.delete(path);
    const { dir, node, name } = this.files.place(`${this.home}/${path}`);
    if (node) this.files.drop(dir, name);
  }

  take(path, entry) {
    const old = this.seen.get(path);
    if (old && old.kind === entry.kind && (entry.kind === "dir" || (old.mtime === entry.mtime && old.size === entry.size))) return;
    const { dir, node, name } = this.files.place(`${this.home}/${path}`);
    if (node && entry.kind === "dir") { this.seen.set(path, { ...entry, node, version: 0 }); return; }
    const load = async () => new Uint8Array(await (await entry.handle.getFile()).arrayBuffer());
    const made = new Node(entry.kind, entry.kind === "dir" ? 0o755 : 0o644, entry.kind === "dir" ? {} : { load, mtime: entry.mtime, size: entry.size });
    if (node) this.files.drop(dir, name);
    this.files.put(dir, name, made);
    this.seen.set(path, { ...entry, node: made, version: made.version });
  }

  // flush writes what changed in memory. New files come first, the history of
  // the maker's files before them, what goes last: a kill between leaves both.
  async flush() {
    if (!this.folder) return;
    const now = new Map();
    walk(this.top(), "", now);
    const wrote = [...now].filter(([path, node]) => this.differs(path, node));
    for (const [path, node] of wrote.sort(([a], [b]) => rank(a) - rank(b))) await this.write(path, node);
    const gone = [...this.seen.keys()].filter((path) => !now.has(path)).sort((a, b) => b.length - a.length);
    for (const path of gone) await this.remove(path);
  }

  differs(path, node) {
    const old = this.seen.get(path);
    if (!old || old.kind !== node.kind) return true;
    return node.kind === "file" && (old.node !== node || old.version !== node.version);
  }

  async write(path, node) {
    const old = this.seen.get(path);
    if (old && old.kind !== node.kind) await this.remove(path);
    if (node.kind === "dir") {
      this.seen.set(path, { kind: "dir", handle: await this.dir(path), node, version: 0 });
      return;
    }
    const { version } = node;
    const bytes = (await node.bytes()).slice();
    const handle = await (await this.dir(parent(path))).getFileHandle(last(path), { create: true });
    await fill(handle, bytes);
    const file = await handle.getFile();
    this.seen.set(path, { kind: "file", handle, node, version, mtime: file.lastModified, size: file.size });
  }

  async dir(path) {
    let at = this.folder;
    for (const name of path.split("/")) if (name) at = await at.getDirectoryHandle(name, { create: true });
    return at;
  }

  async remove(path) {
    try {
      await (await this.dir(parent(path))).removeEntry(last(path), { recursive: true });
    } catch (error) {
      if (error.name !== "NotFoundError") throw error;
    }
    this.seen.delete(path);
  }

  // reset drops what is in memory alone, after the disk refused it.
  async reset() {
    this.top().names.clear();
    this.seen.clear();
    await this.look();
  }
}

// fill replaces a file's content. Where the browser can, the old one stays
// until the new is whole.
async function fill(handle, bytes) {
  if (handle.createWritable) {
    const to = await handle.createWritable();
    try {
      await to.write(bytes);
      await to.close();
    } catch (error) {
      await to.abort().catch(() => {});
      throw error;
    }
    return;
  }
  const to = await handle.createSyncAccessHandle();
  try {
    to.truncate(0);
    to.write(bytes, { at: 0 });
    to.flush();
  } finally { to.close(); }
}

function walk(dir, at, out) {
  for (const [name, node] of dir.names) {
    out.set(at + name, node);
    if (node.kind === "dir") walk(node, `${at}${name}/`, out);
  }
}

const rank = (path) => (path.startsWith(".jarmark-history") || path.includes("/.jarmark-history") ? 0 : 1);
const parent = (path) => path.slice(0, Math.max(path.lastIndexOf("/"), 0));
const last = (path) => path.slice(path.lastIndexOf("/") + 1);
