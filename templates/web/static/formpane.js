// The form: one step at a time; each keystroke becomes a change of the text.

import { byId } from "./dom.js";
import { Rows, indexOf, tableOf } from "./rows.js";

export class FormPane {
  constructor(live, goToText, removed) {
    this.live = live;
    this.removed = removed;
    this.last = 0; // number of the last row taken out
    this.html = null; // of the form as it came
    this.form = byId("form");
    this.buttons = [...document.querySelectorAll("[data-goto]")];
    this.step = this.buttons[0]?.dataset.goto;
    this.form.addEventListener("input", (event) => this.typed(event.target));
    this.form.addEventListener("change", (event) => this.left(event.target));
    this.form.addEventListener("submit", (event) => event.preventDefault());
    this.form.addEventListener("click", (event) => this.clicked(event, goToText));
    this.form.addEventListener("error", (event) => event.target.remove(), true); // a picture that can't be drawn
    for (const button of this.buttons) button.addEventListener("click", () => this.goTo(button.dataset.goto));
    byId("next").addEventListener("click", () => this.walk(1));
    byId("back").addEventListener("click", () => this.walk(-1));
    this.goTo(this.step, false);
  }

  // typed: an emptied field waits until it is left, so that its line keeps its
  // place while a new value is typed.
  typed(input) {
    if (input.type === "checkbox" || input.type === "radio" || input.value.trim() === "") return;
    this.set(input, input.value);
  }

  left(input) {
    if (input.type === "checkbox") this.set(input, input.checked ? "true" : "");
    else if (input.type === "radio") this.set(input, input.value, true);
    else if (input.value.trim() === "") this.set(input, "");
  }

  set(input, value, anew = false) {
    this.live.changed({ do: "set", path: input.name, value }, anew);
  }

  clicked(event, goToText) {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.line) goToText(Number(button.dataset.line), Number(button.dataset.column));
    const { do: what, path } = button.dataset;
    if (!what) return;
    const rows = new Rows(tableOf(path));
    if (what === "add") {
      const row = rows.append();
      row.querySelector("input, select, textarea").focus();
      row.scrollIntoView({ block: "nearest" });
      return this.live.changed({ do: "add", path, value: "" });
    }
    const row = button.closest("[data-row]");
    if (what === "remove") return this.remove(rows, row, path);
    rows.move(row, what === "up" ? -1 : 1);
    (button.disabled ? row.querySelector("[data-do]:not(:disabled)") : button).focus();
    this.live.changed({ do: what, path, value: "" });
  }

  // remove takes a row out; it can be put back, whatever is done meanwhile.
  remove(rows, row, path) {
    const id = ++this.last;
    const name = row.querySelector("input")?.value || row.querySelector("legend").textContent;
    rows.remove(row);
    const next = rows.all[Math.min(indexOf(path), rows.all.length - 1)];
    (next?.querySelector('[data-do="remove"]') || rows.add.querySelector("button")).focus();
    this.live.changed({ do: "remove", path, value: "", id });
    this.removed(name, () => this.putBack(row, path, id));
  }

  async putBack(row, path, id) {
    if (!await this.live.flush()) return;
    const text = this.live.removed.get(id);
    const table = tableOf(path);
    if (text === undefined) return;
    const at = new Rows(table).insert(row, indexOf(path));
    this.goTo(row.closest("[data-step]").dataset.step, false);
    row.querySelector("input, select, textarea").focus();
    this.live.changed({ do: "restore", path: `${table}[${at}]`, value: text });
  }

  // goTo shows one step of the form.
  goTo(step, focus = true) {
    this.step = step;
    for (const section of this.form.querySelectorAll("[data-step]")) section.hidden = section.dataset.step !== step;
    for (const button of this.buttons) {
      if (button.dataset.goto === step) button.setAttribute("aria-current", "step");
      else button.removeAttribute("aria-current");
    }
    const at = this.buttons.findIndex((button) => button.dataset.goto === step);
    byId("back").hidden = at <= 0;
    byId("next").hidden = at < 0 || at === this.buttons.length - 1;
    if (byId("next").hidden === false) byId("next").textContent = `Next: ${label(this.buttons[at + 1])}`;
    if (focus) this.enter(step);
    this.buttons[at]?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }

  // enter puts the focus on a step and its beginning in sight.
  enter(step) {
    byId(`step-${step}`)?.focus({ preventScroll: true });
    const pane = this.form.closest(".pane");
    pane.scrollTo(0, 0);
    if (pane.getBoundingClientRect().top < 0) pane.scrollIntoView({ block: "start" });
  }

  walk(by) {
    const at = this.buttons.findIndex((button) => button.dataset.goto === this.step);
    const next = this.buttons[at + by];
    if (next) this.goTo(next.dataset.goto);
  }

  // replace takes the form anew; what is typed but not yet in the text, the
  // field being typed in, and what was opened stay.
  replace(html) {
    const active = this.form.contains(document.activeElement) ? document.activeElement : null;
    const at = active && { id: active.id, start: active.selectionStart, end: active.selectionEnd };
    const open = [...this.form.querySelectorAll("details[open]")].map(detailsKey);
    this.form.innerHTML = html;
    if (!this.form.querySelector(`[data-step="${this.step}"]`)) this.step = this.buttons[0]?.dataset.goto;
    for (const details of this.form.querySelectorAll("details")) if (open.includes(detailsKey(details))) details.open = true;
    for (const change of this.live.draft.changes) this.refill(change);
    this.goTo(this.step, false);
    if (at?.id) refocus(at);
  }

  // pictures shows the maker's own label anew once it is saved.
  pictures(mark) {
    for (const image of this.form.querySelectorAll('img[src*="batch="]')) image.src = `${image.getAttribute("src").replace(/&v=.*/, "")}&v=${mark}`;
  }

  refill(change) {
    const input = byId(`f-${change.path}`);
    if (change.do === "set" && input && input.type !== "radio" && input.type !== "checkbox") input.value = change.value;
  }

  // reveal opens what hides a field and puts the focus there.
  reveal(path) {
    const field = nearest(path, (p) => this.form.querySelector(`[data-field=${quoted(p)}], [data-row=${quoted(p)}]`) || this.form.querySelector(`[data-row^=${quoted(`${p}[`)}], [data-field^=${quoted(`${p}.`)}]`));
    if (!field) return false;
    this.goTo(field.closest("[data-step]").dataset.step, false);
    for (let details = field.closest("details"); details; details = details.parentElement.closest("details")) details.open = true;
    const input = field.querySelector("input:checked, input:not([type=radio]), select, textarea, input, button");
    input?.focus();
    field.scrollIntoView({ block: "center" });
    return true;
  }
}

const quoted = (path) => `"${CSS.escape(path)}"`;

const label = (button) => button.firstChild.textContent.trim();

const detailsKey = (details) => details.querySelector("[data-field]")?.dataset.field;

// nearest tries a path, then the tables it stands in.
export function nearest(path, find) {
  for (let p = path; p; p = p.replace(/(\.[^.[\]]+|\[\d+\])$/, "")) {
    const found = find(p);
    if (found) return found;
    if (!/[.[]/.test(p)) return null;
  }
  return null;
}

function refocus({ id, start, end }) {
  const input = byId(id);
  input?.focus();
  if (input?.setSelectionRange && start != null && input.type !== "date") input.setSelectionRange(start, end);
}
