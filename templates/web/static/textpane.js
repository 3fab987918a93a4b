// The text of the file, with line numbers and marks where findings are.

import { byId, make } from "./dom.js";

export class TextPane {
  constructor(typed) {
    this.area = byId("text");
    this.gutter = byId("gutter");
    this.worst = new Map();
    this.area.addEventListener("input", () => { this.number(); typed(this.area.value); });
    this.area.addEventListener("scroll", () => { this.gutter.scrollTop = this.area.scrollTop; });
    this.number();
  }

  // set shows a new text and keeps the cursor where it was.
  set(text) {
    if (this.area.value === text) return;
    const { selectionStart, selectionEnd, scrollTop } = this.area;
    this.area.value = text;
    this.area.setSelectionRange(Math.min(selectionStart, text.length), Math.min(selectionEnd, text.length));
    this.area.scrollTop = scrollTop;
    this.number();
  }

  // mark notes the gravest finding of each line.
  mark(findings) {
    this.worst = new Map();
    for (const { line, severity } of findings) {
      if (line && severity !== "note" && this.worst.get(line) !== "error") this.worst.set(line, severity);
    }
    this.number();
  }

  number() {
    const lines = this.area.value.split("\n").length;
    const now = JSON.stringify([lines, [...this.worst]]);
    if (now === this.numbered) return;
    this.numbered = now;
    const rows = [];
    for (let n = 1; n <= lines; n++) rows.push(make("span", { class: this.worst.get(n) }, String(n)), "\n");
    this.gutter.replaceChildren(...rows);
    this.gutter.scrollTop = this.area.scrollTop;
  }

  // replace writes in a line, from a column up to another, counted in characters.
  replace(line, column, end, instead) {
    const lines = this.area.value.split("\n");
    const letters = [...lines[line - 1]];
    letters.splice(column - 1, end - column, instead);
    lines[line - 1] = letters.join("");
    this.set(lines.join("\n"));
  }

  // goTo selects a place, columns counted in characters.
  goTo(line, column = 1) {
    const lines = this.area.value.split("\n");
    const before = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
    const inLine = [...(lines[line - 1] || "")].slice(0, column - 1).join("").length;
    this.area.focus();
    this.area.setSelectionRange(before + inLine, before + (lines[line - 1] || "").length);
    const height = this.area.scrollHeight / Math.max(lines.length, 1);
    this.area.scrollTop = Math.max(0, (line - 4) * height);
    this.area.closest(".pane").scrollIntoView({ block: "nearest" });
  }
}
