// Saving, and what to do when another program changed the file meanwhile.

import { ask, rooted, words, Refused } from "./api.js";
import { byId, make, say } from "./dom.js";

export class Saving {
  constructor(draft, live, reload) {
    Object.assign(this, { draft, live, reload });
    this.dialog = byId("conflict");
    this.state = byId("state");
    byId("save").addEventListener("click", () => this.save());
    document.addEventListener("keydown", (event) => {
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "s") { event.preventDefault(); this.save(); }
    });
    addEventListener("beforeunload", (event) => { if (draft.unsaved && !this.leaving) event.preventDefault(); });
    addEventListener("focus", () => this.look());
    this.dialog.addEventListener("click", (event) => this.answer(event.target.closest("[data-answer]")?.dataset.answer));
    draft.watch(() => this.tell());
    this.tell();
  }

  tell(wrong = "") {
    const open = this.draft.unsaved || this.draft.base === "";
    this.state.className = `state ${wrong ? "wrong" : open ? "unsaved" : ""}`;
    const text = wrong || (open ? "Not saved yet" : "Saved");
    if (this.state.textContent !== text) this.state.textContent = text;
  }

  async save(base = this.draft.base) {
    const { draft } = this;
    if (!await this.live.flush()) return;
    const text = draft.text;
    try {
      const answer = await ask("do/save", { file: draft.file, text, base });
      draft.saved(text, answer.mark);
      say("Saved");
    } catch (fault) {
      if (fault instanceof Refused && fault.status === 409) this.conflict(fault.answer);
      else this.tell(words(fault));
    }
  }

  conflict({ theirs, mark }) {
    this.theirs = { text: theirs, mark };
    byId("theirs").hidden = true;
    this.dialog.showModal();
  }

  async answer(choice) {
    if (choice === "see") return this.see();
    if (choice) this.dialog.close();
    if (choice === "mine") return this.save(this.theirs.mark);
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
    this.draft.kept = this.theirs.text;
    this.draft.base = this.theirs.mark;
    this.draft.forget();
    this.reload();
  }

  async copy() {
    const { draft } = this;
    try {
      const answer = await ask("do/copy", { file: draft.file, text: draft.text, base: "" });
      this.leaving = true;
      draft.forget();
      location.assign(rooted(`batch/${encodeURIComponent(answer.file)}`));
    } catch (fault) { this.tell(words(fault)); }
  }

  // look asks, when the window is entered again, whether the file changed.
  async look() {
    if (this.draft.base === "" || this.dialog.open) return;
    const response = await fetch(rooted(`do/disk/${encodeURIComponent(this.draft.file)}`)).catch(() => null);
    if (!response?.ok) return;
    const { mark } = await response.json();
    if (mark === this.draft.base || this.dialog.open) return;
    if (this.draft.unsaved) this.save();
    else location.reload();
  }
}
