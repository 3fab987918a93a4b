// Keeps the page last opened, and its labels, for the next visit (see seen.js):
// when nothing was asked for a while, the program is asked for both anew, of
// the files as they lie in memory, which are what it reads.

import { Seen, counts, isPage, lookOf, today } from "./seen.js";

const rest = 1500; // milliseconds without a question

export class Keeper {
  // answer(ask) asks the program; top() is the folder in memory.
  constructor(version, token, top, answer) {
    Object.assign(this, { seen: new Seen(version, token), top, answer, page: null, look: null, kept: "", timer: 0 });
  }

  // met notes a question.
  met(ask) {
    if (isPage(ask)) {
      if (ask.path !== this.page?.path) this.look = null;
      [this.page, this.kept] = [ask, ""];
    }
    const look = lookOf(ask);
    if (look) this.look = { ask, look };
    this.later();
  }

  // wrote drops what is kept: the files are others now.
  async wrote() {
    this.kept = "";
    await this.seen.forget();
    this.later();
  }

  moved() { [this.page, this.look, this.kept] = [null, null, ""]; }

  later() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.keep().catch(() => {}), rest); // a browser without room keeps nothing
  }

  async keep() {
    if (!this.page || !this.look) return;
    const [before, day] = [this.state(), today()];
    if (this.kept === day && this.still(this.was)) return;
    const asks = [this.page, await this.lookNow()];
    const mark = await this.seen.mark(before, day);
    const there = await Promise.all(asks.map((ask) => this.seen.recall(mark, ask)));
    if (mark && !there.every(Boolean)) {
      const answers = [];
      for (const ask of asks) answers.push({ ask, ...await this.answer(ask) });
      if (!this.still(before)) return; // the next question comes by here again
      await this.seen.keep(mark, answers);
    }
    [this.kept, this.was] = [day, before];
  }

  // lookNow is what the page will ask when it is opened with the text on disk.
  async lookNow() {
    const { ask, look } = this.look;
    const node = this.top().names.get(look.file);
    const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(await node.bytes()).replace(/\r\n?/g, "\n");
    return { ...ask, body: new TextEncoder().encode(JSON.stringify({ ...look, text })).buffer };
  }

  // state are the files a page can read, each as it is now.
  state(dir = this.top(), at = "", out = []) {
    for (const [name, node] of dir.names) {
      const path = at + name;
      if (!counts(path)) continue;
      if (node.kind === "dir") this.state(node, `${path}/`, out);
      else out.push({ path, node, version: node.version, size: node.size, bytes: () => node.bytes() });
    }
    return out;
  }

  still(before) {
    const now = this.state();
    return now.length === before.length && now.every(({ path, node, version }, i) => path === before[i].path && node === before[i].node && version === before[i].version);
  }
}
