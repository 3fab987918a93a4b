// Saving, by itself and when asked, and what to do when another program
// changed the file meanwhile.

import { ask, rooted, words, Refused } from "./api.js";
import { byId, make, say } from "./dom.js";

const quiet = 900; // milliseconds without a key, then the work is saved
const slow = 700; // until it is said that saving goes on

export class Saving {
  constructor(draft, live, { reload, notice }) {
    Object.assign(this, { draft, live, reload, notice });
    this.dialog = byId("conflict");
    this.state = byId("state");
    byId("save").addEventListener("click", () => this.save());
    document.addEventListener("keydown", (event) => {
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "s") { event.preventDefault(); this.save(); }
    });
    addEventListener("beforeunload", (event) => { if (draft.unsaved && !this.leaving && (this.held || this.live.seeking)) event.preventDefault(); });
    addEventListener("pagehide", () => this.part());
    document.addEventListener("visibilitychange", () => { if (document.visibilityState === "hidden") this.part(); });
    addEventListener("focus", () => this.look());
    this.dialog.addEventListener("click", (event) => this.answer(event.target.closest("[data-answer]")?.dataset.answer));
    draft.watch(() => { this.tell(); this.later(); });
    this.tell();
  }

  tell(wrong = "") {
    const open = this.draft.unsaved || this.draft.base === "";
    this.state.className = `state ${wrong ? "wrong" : open ? "unsaved" : ""}`;
    const text = wrong || (open ? "Not saved yet" : "Saved");
    if (this.state.textContent !== text) this.state.textContent = text;
  }

  // later saves when typing rests; not while something stands in the way that
  // the maker must decide.
  later() {
    clearTimeout(this.timer);
    if (this.draft.unsaved && !this.held && !this.live.seeking) this.timer = setTimeout(() => this.save({ passing: true }), quiet);
  }

  // back: the program is there again.
  back() {
    this.tell();
    this.later();
  }

  async save({ base = this.draft.base, passing = false } = {}) {
    clearTimeout(this.timer);
    const { draft } = this;
    if (this.saving) { this.again = { passing }; return; }
    const said = setTimeout(() => { this.state.textContent = "Saving …"; }, slow);
    this.saving = true;
    let done = false;
    try {
      const { text, mark } = await ask("do/save", { file: draft.file, text: draft.text, changes: draft.changes, base, passing });
      draft.saved(text, mark);
      this.held = false;
      done = true;
      if (!passing) say("Saved");
    } catch (fault) { done = this.failed(fault, passing); } finally {
      clearTimeout(said);
      this.saving = false;
    }
    const next = this.again;
    this.again = null;
    if (next && done) await this.save(next);
    else if (done) this.later();
  }

  // failed gives whether all is well after all.
  failed(fault, passing) {
    if (fault instanceof Refused && fault.status === 409 && "theirs" in fault.answer) {
      const { theirs, mark, mine, gone } = fault.answer;
      if (theirs === mine && !gone) { this.draft.saved(theirs, mark); return true; } // saved by this page as it was left
      this.held = true;
      this.theirs = { text: theirs, mark, gone };
      const words = gone ? "The file is gone from the disk." : "Another program changed this file.";
      this.tell(words);
      const choose = make("button", { type: "button" }, "Choose what to keep");
      choose.addEventListener("click", () => this.conflict());
      if (passing) this.notice("conflict", make("span", {}, `${words} Nothing is saved until you choose.`), choose);
      else this.conflict();
      return false;
    }
    if (fault instanceof Refused) this.held = true;
    else this.live.lost();
    this.tell(words(fault));
    return false;
  }

  // part saves what is left when the window is closed or put away; the answer
  // may come too late to be read.
  part() {
    if (!this.draft.unsaved || this.held || this.leaving) return;
    ask("do/save", { file: this.draft.file, text: this.draft.text, changes: this.draft.changes, base: this.draft.base, passing: true }, undefined, true)
      .then(({ text, mark }) => this.draft.saved(text, mark), () => { /* it stays in the session */ });
  }

  conflict() {
    byId("theirs").hidden = true;
    this.dialog.classList.toggle("gone", this.theirs.gone);
    this.dialog.showModal();
  }

  async answer(choice) {
    if (choice === "see") return this.see();
    if (!choice) return undefined;
    this.dialog.close();
    if (choice !== "later") this.notice("conflict");
    if (choice === "mine") return this.save({ base: this.theirs.mark });
    if (choice === "theirs") return this.take();
    if (choice === "copy") return this.copy();
    return undefined;
  }

  // see shows the text on disk, with the lines that differ from mine.
  see() {
    const mine = new Set(this.draft.text.split("\n"));
    const rows = this.theirs.text.split("\n").map((line) => mine.has(line) ? `${line}\n` : make("mark", { class: "other" }, line));
    const place = byId("theirs");
    place.hidden = false;
    place.querySelector("pre").replaceChildren(...rows);
    place.querySelector("pre").focus();
  }

  take() {
    this.held = false;
    this.draft.kept = this.theirs.text;
    this.draft.base = this.draft.keptMark = this.theirs.mark;
    this.draft.forget();
    this.reload();
  }

  async copy() {
    const { draft } = this;
    try {
      if (!await this.live.flush()) return;
      const answer = await ask("do/copy", { file: draft.file, text: draft.text, base: "" });
      this.leaving = true;
      draft.forget();
      location.assign(rooted(`batch/${encodeURIComponent(answer.file)}`));
    } catch (fault) { this.tell(words(fault)); }
  }

  // look asks, when the window is entered again, whether the file changed.
  async look() {
    if (this.draft.base === "" || this.dialog.open || this.held || this.saving) return;
    const response = await fetch(rooted(`do/disk/${encodeURIComponent(this.draft.file)}`)).catch(() => null);
    if (this.saving || response?.status !== 404 && !response?.ok) return;
    const mark = response.ok ? (await response.json()).mark : "";
    if (mark === this.draft.base || this.dialog.open) return;
    if (this.draft.unsaved || mark === "") this.save({ passing: true });
    else location.reload();
  }
}
