// Keeps text, form, labels and findings in step: waits for a pause in typing,
// asks once, and drops answers that something newer has overtaken.

import { ask, words } from "./api.js";

const pause = 120; // milliseconds

export class Live {
  constructor(draft, labels, show) {
    this.draft = draft;
    this.labels = labels; // knows the pieces chosen, and whether for presents
    this.show = show; // {answer, fault, busy}
    this.newest = 0;
    this.formWanted = false;
  }

  // changed: something was done in the form. Rows and pictures want it anew.
  changed(change, anew = change.do !== "set") {
    this.draft.change(change);
    this.soon(anew);
  }

  // typed: the text itself was edited; an answer on its way is out of date.
  typed(text) {
    this.overtake();
    this.draft.write(text);
    this.soon(true);
  }

  soon(form = false) {
    this.formWanted ||= form;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.refresh(), pause);
  }

  overtake() {
    this.newest++;
    this.draft.sent = 0;
    this.stop?.abort();
  }

  async refresh() {
    clearTimeout(this.timer);
    this.overtake();
    const mine = this.newest;
    const { draft } = this;
    this.stop = new AbortController();
    draft.sent = draft.changes.length;
    const form = this.formWanted;
    this.show.busy(true);
    try {
      const answer = await ask("do/look", { file: draft.file, text: draft.text, changes: draft.changes, pieces: this.labels.pieces, gift: this.labels.gift, form }, this.stop.signal);
      if (mine !== this.newest) return;
      if (form) this.formWanted = false;
      draft.settle(answer.text);
      this.show.answer(answer);
    } catch (fault) {
      if (mine !== this.newest || fault.name === "AbortError") return;
      draft.sent = 0;
      this.show.fault(words(fault));
    } finally {
      if (mine === this.newest) this.show.busy(false);
    }
  }

  // flush waits until everything typed is in the text.
  async flush() {
    for (let tries = 0; this.draft.changes.length > 0 && tries < 5; tries++) await this.refresh();
    return this.draft.changes.length === 0;
  }
}
