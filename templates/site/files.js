// Files in memory, as the Go program in the browser asks for them: the calls of
// Node's fs module that Go's syscall package makes, with POSIX meaning. What
// lies on the disk below is read when it is first opened (see disk.js).

const kinds = { dir: 0o040000, file: 0o100000 };
const flagsOf = { O_WRONLY: 1, O_RDWR: 2, O_CREAT: 64, O_EXCL: 128, O_TRUNC: 512, O_APPEND: 1024, O_DIRECTORY: 65536 };

const longest = 255; // bytes of a name, as disks have it

let inodes = 1;

// Node is a file or a folder. Version counts its changes; load, when there, is
// how to read what is not in memory yet.
export class Node {
  constructor(kind, mode, more = {}) {
    Object.assign(this, { kind, mode: mode & 0o777, ino: inodes++, mtime: Date.now(), atime: Date.now(), links: 0, version: 0, size: 0, data: new Uint8Array(0), load: null }, more);
    if (kind === "dir") this.names = new Map();
  }

  touch() { this.mtime = Date.now(); this.version++; }

  // bytes are the content, read from the disk if need be.
  async bytes() {
    if (this.load) {
      const [load, version] = [this.load, this.version];
      const data = await load();
      if (this.load === load && this.version === version) Object.assign(this, { data, size: data.length, load: null });
    }
    return this.data.subarray(0, this.size);
  }

  // resize keeps spare room, so that many small writes do not copy all each time.
  resize(size) {
    if (size > this.data.length) {
      const grown = new Uint8Array(Math.max(size, 2 * this.data.length, 512));
      grown.set(this.data.subarray(0, this.size));
      this.data = grown;
    } else if (size < this.size) this.data = this.data.slice(0, size);
    else this.data.fill(0, this.size, size);
    this.size = size;
    this.touch();
  }
}

export function fault(code) {
  const error = new Error(code);
  error.code = code;
  return error;
}

// Files is one tree of them. Its public methods are those of Node's fs.
export class Files {
  constructor(print = () => {}) {
    this.constants = flagsOf;
    this.root = new Node("dir", 0o755);
    this.root.links = 1;
    this.opened = new Map();
    this.next = 3; // after stdin, stdout and stderr
    this.print = print;
  }

  // find walks a path. Every name but the last must be a folder.
  find(path) {
    let at = this.root;
    for (const name of parts(path)) {
      if (at.kind !== "dir") throw fault("ENOTDIR");
      at = at.names.get(name);
      if (!at) throw fault("ENOENT");
    }
    if (path.endsWith("/") && at.kind !== "dir") throw fault("ENOTDIR");
    return at;
  }

  // place is the folder a name stands in, and the name.
  place(path) {
    const names = parts(path);
    const name = names.pop();
    if (name === undefined) throw fault("EBUSY"); // the root itself
    if (new TextEncoder().encode(name).length > longest) throw fault("ENAMETOOLONG");
    const dir = this.find("/" + names.join("/"));
    if (dir.kind !== "dir") throw fault("ENOTDIR");
    return { dir, name, node: dir.names.get(name) };
  }

  put(dir, name, node) { dir.names.set(name, node); node.links++; dir.touch(); }
  drop(dir, name) { dir.names.get(name).links--; dir.names.delete(name); dir.touch(); }

  file(fd) {
    const open = this.opened.get(fd);
    if (!open) throw fault("EBADF");
    return open;
  }

  async open(path, flags, mode, done) {
    await answer(done, async () => {
      const has = (f) => (flags & flagsOf[f]) !== 0;
      const writes = has("O_WRONLY") || has("O_RDWR");
      let made = false; // a new file may be written whatever its mode
      if (has("O_CREAT")) {
        const at = this.place(path);
        if (at.node && has("O_EXCL")) throw fault("EEXIST");
        if (!at.node && path.endsWith("/")) throw fault("EISDIR");
        made = !at.node;
        if (made) this.put(at.dir, at.name, new Node("file", mode));
      }
      const node = this.find(path);
      if (node.kind === "dir" && (writes || has("O_CREAT"))) throw fault("EISDIR");
      if (node.kind !== "dir" && has("O_DIRECTORY")) throw fault("ENOTDIR");
      if (!made) allowed(node, writes, has("O_RDWR") || !writes);
      if (node.kind === "file" && !(has("O_TRUNC") && writes)) await node.bytes();
      if (node.kind === "file" && has("O_TRUNC") && writes) { node.load = null; node.resize(0); }
      this.opened.set(this.next, { node, at: 0, append: has("O_APPEND"), reads: has("O_RDWR") || !has("O_WRONLY"), writes });
      return this.next++;
    });
  }

  close(fd, done) { answer(done, () => { this.file(fd); this.opened.delete(fd); }); }
  fsync(fd, done) { answer(done, () => { this.file(fd); }); } // the disk is written after each request

  read(fd, into, offset, length, position, done) {
    answer(done, () => {
      const open = this.file(fd);
      if (open.node.kind === "dir") throw fault("EISDIR");
      if (!open.reads) throw fault("EBADF");
      const from = position ?? open.at;
      const part = open.node.data.subarray(Math.min(from, open.node.size), Math.min(from + length, open.node.size));
      into.set(part, offset);
      if (position === null || position === undefined) open.at += part.length;
      return part.length;
    });
  }

  write(fd, from, offset, length, position, done) {
    answer(done, () => {
      const bytes = from.subarray(offset, offset + length);
      if (fd === 1 || fd === 2) { this.print(new TextDecoder().decode(bytes)); return length; }
      const open = this.file(fd);
      if (!open.writes) throw fault("EBADF");
      const at = open.append ? open.node.size : position ?? open.at;
      if (at + length > open.node.size) open.node.resize(at + length);
      open.node.data.set(bytes, at);
      open.node.touch();
      if (position === null || position === undefined) open.at = at + length;
      return length;
    });
  }

  writeSync(fd, bytes) { this.print(new TextDecoder().decode(bytes)); return bytes.length; } // Go's last words

  stat(path, done) { answer(done, () => facts(this.find(path))); }
  lstat(path, done) { this.stat(path, done); } // there are no symbolic links
  fstat(fd, done) { answer(done, () => facts(this.file(fd).node)); }
  readdir(path, done) { answer(done, () => { const n = this.find(path); if (n.kind !== "dir") throw fault("ENOTDIR"); return [...n.names.keys()].sort(); }); }
  readlink(path, done) { answer(done, () => { this.find(path); throw fault("EINVAL"); }); }
  symlink(to, path, done) { answer(done, () => { throw fault("EPERM"); }); }

  mkdir(path, mode, done) {
    answer(done, () => {
      const at = this.place(path);
      if (at.node) throw fault("EEXIST");
      this.put(at.dir, at.name, new Node("dir", mode));
    });
  }

  rmdir(path, done) {
    answer(done, () => {
      const { dir, name, node } = this.place(path);
      if (!node) throw fault("ENOENT");
      if (node.kind !== "dir") throw fault("ENOTDIR");
      if (node.names.size > 0) throw fault("ENOTEMPTY");
      this.drop(dir, name);
    });
  }

  unlink(path, done) {
    answer(done, () => {
      const { dir, name, node } = this.place(path);
      if (!node) throw fault("ENOENT");
      if (node.kind === "dir") throw fault("EISDIR");
      if (path.endsWith("/")) throw fault("ENOTDIR");
      this.drop(dir, name);
    });
  }

  link(path, other, done) {
    answer(done, () => {
      const node = this.find(path);
      const at = this.place(other);
      if (node.kind === "dir") throw fault("EPERM");
      if (at.node) throw fault("EEXIST");
      this.put(at.dir, at.name, node);
    });
  }

  rename(from, to, done) {
    answer(done, () => {
      const [a, b] = [this.place(from), this.place(to)];
      if (!a.node) throw fault("ENOENT");
      if (a.node === b.node) return;
      if (a.node.kind === "dir" && inside(a.node, b.dir)) throw fault("EINVAL");
      if (b.node) {
        if (b.node.kind === "dir" && a.node.kind !== "dir") throw fault("EISDIR");
        if (b.node.kind !== "dir" && a.node.kind === "dir") throw fault("ENOTDIR");
        if (b.node.kind === "dir" && b.node.names.size > 0) throw fault("ENOTEMPTY");
        this.drop(b.dir, b.name);
      }
      this.put(b.dir, b.name, a.node);
      this.drop(a.dir, a.name);
    });
  }

  async truncate(path, size, done) { await answer(done, async () => cut(this.find(path), size)); }
  async ftruncate(fd, size, done) { await answer(done, async () => { if (!this.file(fd).writes) throw fault("EINVAL"); await cut(this.file(fd).node, size); }); }

  chmod(path, mode, done) { answer(done, () => { this.find(path).mode = mode & 0o777; }); }
  fchmod(fd, mode, done) { answer(done, () => { this.file(fd).node.mode = mode & 0o777; }); }
  chown(path, uid, gid, done) { answer(done, () => { this.find(path); }); } // one owner
  lchown(path, uid, gid, done) { this.chown(path, uid, gid, done); }
  fchown(fd, uid, gid, done) { answer(done, () => { this.file(fd); }); }
  utimes(path, atime, mtime, done) { answer(done, () => { Object.assign(this.find(path), { atime: atime * 1000, mtime: mtime * 1000 }); }); }
}

export const parts = (path) => {
  const out = [];
  for (const name of path.split("/")) {
    if (name === "..") out.pop();
    else if (name !== "" && name !== ".") out.push(name);
  }
  return out;
};

async function cut(node, size) {
  if (node.kind === "dir") throw fault("EISDIR");
  await node.bytes();
  node.resize(size);
}

// allowed refuses what the mode of a file does not let its owner do.
function allowed(node, writes, reads) {
  if (node.kind === "file" && ((writes && !(node.mode & 0o200)) || (reads && !(node.mode & 0o400)))) throw fault("EACCES");
}

// inside reports whether a folder is another, or lies below it.
function inside(top, dir) {
  if (top === dir) return true;
  return [...top.names.values()].some((n) => n.kind === "dir" && inside(n, dir));
}

function facts(node) {
  const dir = node.kind === "dir";
  return {
    dev: 1, ino: node.ino, mode: kinds[node.kind] | node.mode, nlink: dir ? 2 : node.links, uid: 0, gid: 0, rdev: 0,
    size: dir ? 0 : node.size, blksize: 4096, blocks: Math.ceil(node.size / 512),
    atimeMs: node.atime, mtimeMs: node.mtime, ctimeMs: node.mtime, isDirectory: () => dir,
  };
}

// answer calls back as Node does, at once when the work is done at once.
function answer(done, work) {
  let value;
  try {
    value = work();
  } catch (error) {
    return done(named(error));
  }
  if (value instanceof Promise) return value.then((v) => done(null, v), (error) => done(named(error)));
  return done(null, value);
}

// named gives a fault of the disk a code that Go knows.
function named(error) {
  const codes = { NotFoundError: "ENOENT", NotAllowedError: "EACCES", NoModificationAllowedError: "EBUSY", QuotaExceededError: "ENOSPC" };
  if (!error.code || typeof error.code !== "string") return fault(codes[error.name] ?? "EIO");
  return error;
}
