// Keeps text, form, labels and findings in step. One request is on its way at
// a time; one that newer typing has overtaken is dropped, unless the maker has
// waited for a picture too long already. When the program is gone, it is asked
// until it is there again.

import { askInLines, rooted, words, Refused } from "./api.js";

const patience = 200; // milliseconds without a picture while typing goes on
const formPause = 400; // the form follows the text when typing in it rests
const slow = 2000; // until it is said that the answer is waited for
const again = 1000; // between two tries to reach the program

export class Live {
  constructor(draft, labels, show) {
    this.draft = draft;
    this.labels = labels; // knows the pieces chosen, and whether for presents
    this.show = show; // {ahead, answer, fault, busy, back}
    this.newest = 0;
    this.formWanted = false;
    this.removed = new Map(); // number of a change -> text of the row taken out
  }

  // changed: something was done in the form. Pictures want it anew.
  changed(change, anew = false) {
    this.draft.change(change);
    this.soon(anew);
  }

  // typed: the text itself was edited; an answer on its way is out of date.
  typed(text, anew = false) {
    this.overtake();
    this.draft.write(text);
    clearTimeout(this.rest);
    if (!anew) this.rest = setTimeout(() => this.soon(true), formPause);
    this.soon(anew);
  }

  soon(form = false) {
    this.formWanted ||= form;
    this.waiting ??= performance.now();
    if (this.timer) return;
    this.timer = setTimeout(() => {
      this.timer = 0;
      if (this.asking && performance.now() - this.waiting > patience) this.dirty = true;
      else this.refresh();
    });
  }

  overtake() {
    this.newest++;
    this.draft.sent = 0;
    this.asking = false;
    this.stop?.abort();
  }

  async refresh() {
    this.overtake();
    const mine = this.newest;
    const { draft } = this;
    this.stop = new AbortController();
    this.dirty = false;
    draft.sent = draft.changes.length;
    const form = this.formWanted;
    this.asking = true;
    this.show.busy(true);
    const slowly = setTimeout(() => this.show.fault("Waiting for jarmark …"), slow);
    try {
      const answer = await askInLines("do/look", { file: draft.file, text: draft.text, changes: draft.changes, pieces: this.labels.pieces, gift: this.labels.gift, form, have: this.labels.have, first: this.labels.inSight }, this.stop.signal, (line) => { if (mine === this.newest) this.show.ahead(line); });
      if (mine !== this.newest) return;
      if (form) this.formWanted = false;
      for (const [id, row] of Object.entries(answer.removed ?? {})) this.removed.set(Number(id), row);
      draft.settle(answer.text);
      this.waiting = null;
      this.show.answer(answer);
    } catch (fault) {
      if (mine !== this.newest || fault.name === "AbortError") return;
      draft.sent = 0;
      this.show.fault(words(fault));
      if (!(fault instanceof Refused)) this.lost();
    } finally {
      clearTimeout(slowly);
      if (mine === this.newest) {
        this.asking = false;
        this.show.busy(false);
        if (this.dirty || this.waiting === null && draft.changes.length > 0) this.soon();
      }
    }
  }

  // lost asks for the program until it answers, then goes on.
  lost() {
    if (this.seeking) return;
    this.seeking = setInterval(async () => {
      const there = await fetch(rooted("do/alive"), { cache: "no-store" }).catch(() => null);
      if (!there?.ok) return;
      clearInterval(this.seeking);
      this.seeking = 0;
      this.show.back();
      this.refresh();
    }, again);
  }

  // flush waits until everything typed is in the text.
  async flush() {
    for (let tries = 0; this.draft.changes.length > 0 && tries < 5; tries++) await this.refresh();
    return this.draft.changes.length === 0;
  }
}
