// What is wrong, in two places: beside the field that caused it, and in a list
// that leads to field and line.

import { rooted } from "./api.js";
import { byId, make, plural, say } from "./dom.js";
import { nearest } from "./formpane.js";

export class Findings {
  constructor(file, goToField, goToLine, mend) {
    Object.assign(this, { file, goToField, goToLine, mend });
    this.list = byId("findings");
  }

  // show lists findings; beside their fields too when the form is another.
  show(findings, anew = false) {
    const now = JSON.stringify(findings);
    if (now === this.last && !anew) return;
    this.last = now;
    const order = { error: 0, warning: 1, note: 2 };
    const sorted = findings.map((f, i) => [f, i]).sort(([a, i], [b, j]) => order[a.severity] - order[b.severity] || i - j).map(([f]) => f);
    const grave = sorted.filter((f) => f.severity !== "note");
    this.list.replaceChildren(...(grave.length ? grave.map((f) => this.item(f)) : [make("li", { class: "finding fine" }, "Nothing to mend.")]));
    this.aside(sorted.filter((f) => f.severity === "note"));
    this.beside(sorted.filter((f) => this.mine(f)));
    this.count(findings);
  }

  // aside lists the notes, which ask for nothing, folded away.
  aside(notes) {
    const place = byId("notes");
    place.hidden = notes.length === 0;
    place.querySelector("summary").textContent = plural(notes.length, "note", "notes");
    place.querySelector("ul").replaceChildren(...notes.map((f) => this.item(f)));
  }

  mine(finding) { return finding.file === "" || finding.file === this.file; }

  item(f) {
    const go = make("p", { class: "go" });
    if (!this.mine(f)) go.append(make("a", { href: f.file.endsWith("kitchen.toml") ? rooted("kitchen") : rooted("") }, f.file.endsWith("kitchen.toml") ? "on the Kitchen page" : `in ${f.file}`));
    else {
      if (f.instead) go.append(this.button(`Write ${f.instead}`, () => this.mend(f), f.message));
      if (f.path) go.append(this.button("Go to the field", () => this.goToField(f.path), f.message));
      if (f.line) go.append(this.button(`Line ${f.line}`, () => this.goToLine(f.line, f.column), f.message));
    }
    return make("li", { class: `finding ${f.severity}` }, make("p", {}, make("span", { class: "sev" }, f.severity), ` ${f.message}`),
      f.hint ? make("p", { class: "hint" }, f.hint) : null, f.cite ? make("p", { class: "cite" }, f.cite) : null, go);
  }

  button(text, does, about) {
    const button = make("button", { type: "button", "aria-label": `${text}: ${about}` }, text);
    button.addEventListener("click", does);
    return button;
  }

  // beside writes each finding below its field, the gravest only.
  beside(findings) {
    const taken = new Map();
    for (const f of findings) {
      if (!f.path || f.severity === "note") continue;
      const place = nearest(f.path, (p) => document.getElementById(`p-${p}`));
      if (place && !taken.has(place)) taken.set(place, f);
    }
    for (const place of document.querySelectorAll("[data-problem]")) {
      const f = taken.get(place);
      place.hidden = !f;
      place.className = `problem ${f?.severity || ""}`;
      place.textContent = f ? [f.message, f.hint].filter(Boolean).join("; ") : "";
      byId(`f-${place.dataset.problem}`)?.setAttribute("aria-invalid", String(f?.severity === "error"));
    }
    this.unfold(taken);
    this.badges(taken);
  }

  // unfold opens what hides an error.
  unfold(taken) {
    for (const [place, f] of taken) {
      const details = f.severity === "error" && place.closest("details");
      if (details) details.open = true;
    }
  }

  // badges counts the findings of each step.
  badges(taken) {
    const counts = new Map();
    for (const place of taken.keys()) {
      const step = place.closest("[data-step]")?.dataset.step;
      counts.set(step, (counts.get(step) || 0) + 1);
    }
    for (const badge of document.querySelectorAll("[data-badge]")) {
      const n = counts.get(badge.dataset.badge) || 0;
      badge.hidden = n === 0;
      badge.replaceChildren(String(n), make("span", { class: "unseen" }, " to look at"));
    }
  }

  count(findings) {
    const errors = findings.filter((f) => f.severity === "error").length;
    const all = findings.filter((f) => f.severity !== "note").length;
    for (const badge of document.querySelectorAll("[data-count]")) {
      badge.hidden = all === 0;
      badge.textContent = all;
      badge.classList.toggle("warning", errors === 0);
    }
    say(errors ? `${plural(errors, "error", "errors")} to mend` : "Labels shown, nothing blocks printing");
  }
}
