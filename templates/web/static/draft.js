// The text being edited, what was typed in the form since, what it was before,
// and whether all of it is on disk. Work not yet saved is kept in the window's
// session, so that a reload, a crash or a restart of the program loses nothing.

const sitting = 1200; // milliseconds: typing on in one field is one step back

export class Draft {
  constructor(file, text, base) {
    this.file = file;
    this.key = `draft:${file}`;
    this.text = text;
    this.kept = text; // as on disk
    this.base = base; // mark of the text the work began from
    this.keptMark = base; // mark of the text on disk
    this.changes = []; // made in the form, not yet in the text
    this.sent = 0; // how many of them are on their way
    this.watchers = [];
    this.before = []; // steps that can be undone: {text, key, when}
    this.after = []; // steps undone
  }

  get unsaved() { return this.text !== this.kept || this.changes.length > 0; }

  watch(watcher) { this.watchers.push(watcher); }

  touched() {
    this.remember();
    for (const watcher of this.watchers) watcher(this);
  }

  // change notes what was done in the form; typing on in one field replaces
  // what was typed before.
  change(change) {
    const last = this.changes.length - 1;
    if (last >= this.sent && change.do === "set" && this.changes[last].do === "set" && this.changes[last].path === change.path) {
      this.changes[last] = change;
    } else {
      this.changes.push(change);
    }
    this.touched();
  }

  // write replaces the text, as typed.
  write(text, key = "text") {
    this.step(text, key);
    this.touched();
  }

  // settle takes the text that came back for the changes sent.
  settle(text) {
    const done = this.changes.slice(0, this.sent);
    this.changes = this.changes.slice(this.sent);
    this.sent = 0;
    this.step(text, done.every((c) => c.do === "set" && c.path === done[0].path) ? done[0]?.path : null);
    if (!this.unsaved) this.base = this.keptMark; // saved by this window as it was left
    this.touched();
  }

  // step goes on to a text; quick steps of one key are one to undo.
  step(text, key) {
    if (text === this.text) return;
    const last = this.before.at(-1);
    if (key && last?.key === key && performance.now() - last.when < sitting) last.when = performance.now();
    else this.before.push({ text: this.text, key, when: performance.now() });
    if (this.before.length > 500) this.before.shift();
    this.after = [];
    this.text = text;
  }

  // undo and redo give whether there was a step to go.
  undo() { return this.go(this.before, this.after); }

  redo() { return this.go(this.after, this.before); }

  go(from, to) {
    const step = from.pop();
    if (!step) return false;
    to.push({ text: this.text });
    this.text = step.text;
    this.touched();
    return true;
  }

  // saved notes what is on disk now.
  saved(text, base) {
    this.kept = text;
    this.base = this.keptMark = base;
    this.touched();
  }

  remember() {
    try {
      if (this.unsaved) sessionStorage.setItem(this.key, JSON.stringify({ text: this.text, changes: this.changes, base: this.base }));
      else sessionStorage.removeItem(this.key);
    } catch { /* a full or forbidden store: the window itself still holds the text */ }
  }

  // recall gives work left unsaved earlier, if there is any.
  recall() {
    try {
      const left = JSON.parse(sessionStorage.getItem(this.key));
      return left && (left.text !== this.text || left.changes.length > 0) ? left : null;
    } catch { return null; }
  }

  // restore takes it up; saved from its own base, so that a file changed
  // meanwhile is not written over.
  restore(left) {
    this.before.push({ text: this.text });
    this.text = left.text;
    this.changes = left.changes;
    this.base = left.base;
    this.touched();
  }

  forget() {
    this.changes = [];
    this.text = this.kept;
    this.touched();
  }
}
