// The form: one step at a time; each keystroke becomes a change of the text.

import { byId } from "./dom.js";

export class FormPane {
  constructor(live, goToText, removed) {
    this.live = live;
    this.removed = removed;
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

  async clicked(event, goToText) {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.line) goToText(Number(button.dataset.line), Number(button.dataset.column));
    const { do: what, path } = button.dataset;
    if (!what) return;
    if (what === "remove") await this.remember(path, button);
    this.after = focusAfter(what, path, button);
    this.live.changed({ do: what, path, value: "" });
  }

  // remember keeps the text as it was before a row is taken out.
  async remember(path, button) {
    const row = button.closest("[data-row]");
    const name = row.querySelector("input")?.value || row.querySelector("legend").textContent;
    await this.live.flush();
    this.removed(name, this.live.draft.text);
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
    for (const details of this.form.querySelectorAll("details")) if (open.includes(detailsKey(details))) details.open = true;
    for (const change of this.live.draft.changes) this.refill(change);
    this.goTo(this.step, false);
    if (this.after) this.after();
    else if (at?.id) refocus(at);
    this.after = null;
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

// focusAfter says where the focus goes once rows have changed.
function focusAfter(what, path, button) {
  const step = button.closest("[data-step]").dataset.step;
  const rows = () => [...document.querySelectorAll(`#step-${step} [data-row]`)];
  const index = Number(/\[(\d+)\]$/.exec(path)?.[1]);
  return () => {
    const all = rows();
    const row = { add: all.at(-1), remove: all[Math.min(index, all.length - 1)], up: all[index - 1], down: all[index + 1] }[what];
    const same = row?.querySelector(`[data-do="${what}"]:not(:disabled)`);
    const target = what === "add" ? row?.querySelector("input") : same || row?.querySelector("[data-do]:not(:disabled)");
    (target || document.querySelector(`#step-${step} .add`))?.focus();
    row?.scrollIntoView({ block: "nearest" });
  };
}
