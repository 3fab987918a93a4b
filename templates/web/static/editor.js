// The page of one file: form, labels, findings and text over one draft.

import { byId, make } from "./dom.js";
import { Draft } from "./draft.js";
import { Findings } from "./findings.js";
import { FormPane } from "./formpane.js";
import { LabelPane } from "./labelpane.js";
import { Live } from "./live.js";
import { making } from "./making.js";
import { printing } from "./printing.js";
import { Saving } from "./saving.js";
import { TextPane } from "./textpane.js";

const main = byId("main");
const { file, mark, piece } = main.dataset;
const draft = new Draft(file, byId("text").value, mark);

const text = new TextPane((value) => live.typed(value));
const labels = new LabelPane(piece, () => live.soon(), goToField);
const live = new Live(draft, labels, { answer, fault: (words) => saving.tell(words), busy: (on) => byId("labels").classList.toggle("busy", on) });
const form = new FormPane(live, goToLine, removed);
const findings = new Findings(file, goToField, goToLine);
const saving = new Saving(draft, live, () => { text.set(draft.text); live.soon(true); });
printing(draft, live, labels);

function answer(a) {
  if (draft.changes.length === 0) text.set(a.text);
  if (a.form) form.replace(a.form);
  labels.show(a.labels);
  findings.show(a.findings);
  text.mark(a.findings.filter((f) => findings.mine(f)));
  byId("facts").innerHTML = a.facts;
  const name = byId("f-name")?.value;
  if (name && byId("make")) byId("title").textContent = name;
}

// removed offers a row back that was taken out of the form.
function removed(row, before) {
  const undo = make("button", { type: "button" }, "Put it back");
  undo.addEventListener("click", () => { notice(null); live.typed(before); text.set(before); form.enter(form.step); });
  notice(make("span", {}, `Removed: ${row}.`), undo);
}

// notice shows one message above the form at a time.
function notice(...parts) {
  byId("notices").replaceChildren(...(parts[0] ? [make("div", { class: "banner" }, ...parts)] : []));
}

function goToField(path) {
  view("form");
  if (!form.reveal(path)) byId("form").querySelector("input")?.focus();
}

function goToLine(line, column) {
  view("text");
  text.goTo(line, column);
}

// view shows one pane where there is room for one only.
function view(name) {
  main.dataset.view = name;
  for (const button of document.querySelectorAll("[data-show]")) button.setAttribute("aria-pressed", String(button.dataset.show === name));
}

for (const button of document.querySelectorAll("[data-show]")) button.addEventListener("click", () => view(button.dataset.show));

byId("peek").addEventListener("click", () => view("labels"));

byId("form").addEventListener("change", (event) => {
  if (event.target.name === "label.kind" && event.target.value) labels.choose(event.target.value);
});

byId("make")?.addEventListener("click", async () => {
  await saving.save();
  if (draft.unsaved) return;
  byId("makedialog").showModal();
  making([file]);
});

// Work left unsaved in this window comes back.
const left = draft.recall();
if (left) {
  draft.restore(left);
  text.set(draft.text);
  const drop = make("button", { type: "button" }, "Drop them");
  drop.addEventListener("click", () => { if (draft.base === left.base) draft.base = mark; draft.forget(); notice(null); text.set(draft.text); live.soon(true); });
  notice(make("span", {}, "Your unsaved changes from before are here again."), drop);
  live.formWanted = true;
}
live.refresh();
