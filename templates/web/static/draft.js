// The text being edited, what was typed in the form since, and whether all of
// it is on disk. Unsaved work is kept in the window's session, so that a
// reload, a crash or a restart of the program loses nothing.

export class Draft {
  constructor(file, text, base) {
    this.file = file;
    this.key = `draft:${file}`;
    this.text = text;
    this.kept = text; // as on disk
    this.base = base; // mark of the text on disk
    this.changes = []; // made in the form, not yet in the text
    this.sent = 0; // how many of them are on their way
    this.watchers = [];
  }

  get unsaved() {
    return this.text !== this.kept || this.changes.length > 0;
  }

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
  write(text) {
    this.text = text;
    this.touched();
  }

  // settle takes the text that came back for the changes sent.
  settle(text) {
    this.changes = this.changes.slice(this.sent);
    this.sent = 0;
    this.text = text;
    this.touched();
  }

  // saved notes what is on disk now.
  saved(text, base) {
    this.kept = text;
    this.base = base;
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

  restore(left) {
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
