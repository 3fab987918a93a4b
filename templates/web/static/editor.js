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
let facts = null;
let rows = 0;
let shownMark = mark;
let [unsaid, waiting] = [null, 0]; // of the last answer, what is not shown yet; and the frame waited for

const text = new TextPane((value) => live.typed(value));
const labels = new LabelPane(piece, () => live.soon(), goToField);
const live = new Live(draft, labels, { ahead: (line) => labels.ahead(line.first), answer, fault: (words) => saving.tell(words), busy: (on) => byId("labels").classList.toggle("busy", on), back: () => saving.back() });
const form = new FormPane(live, goToLine, removed);
const findings = new Findings(file, goToField, goToLine, mend);
const saving = new Saving(draft, live, { reload: () => { text.set(draft.text); live.soon(true); }, notice });
printing(draft, live, labels);

// answer shows what came back: labels at once, and what stands beside them when
// those are on the screen.
function answer(a) {
  if (a.form) form.replace(a.form);
  labels.show(a.labels);
  unsaid = a;
  if (a.form || document.hidden) beside(Boolean(a.form));
  else waiting ||= requestAnimationFrame(() => setTimeout(beside));
}

// beside shows the rest of the last answer: text, findings, facts.
function beside(anew = false) {
  const a = unsaid;
  [unsaid, waiting] = [null, 0];
  if (!a) return;
  if (draft.changes.length === 0) text.set(draft.text);
  findings.show(a.findings, anew);
  text.mark(a.findings.filter((f) => findings.mine(f)));
  if (a.facts !== facts) byId("facts").innerHTML = facts = a.facts;
  const place = byId("weighed");
  if (place && place.textContent !== a.weighed?.join(". ")) place.textContent = a.weighed?.join(". ") ?? "";
  const name = byId("f-name")?.value;
  if (name && byId("make")) byId("title").textContent = name;
}

// mend writes what was meant. What was typed in the form since is waited for:
// the finding is then told anew, with its new place.
async function mend({ line, column, end_column: end, instead }) {
  beside();
  if (draft.changes.length > 0) return void live.flush();
  text.replace(line, column, end, instead);
  live.typed(text.area.value, true);
}

// removed offers a row back that was taken out of the form.
function removed(row, back) {
  const key = `removed ${++rows}`;
  const undo = make("button", { type: "button" }, "Put it back");
  undo.addEventListener("click", () => { notice(key); back(); });
  notice(key, make("span", {}, `Removed: ${row}.`), undo);
}

// notice shows a message above the form, or takes it away; three at most.
function notice(key, ...parts) {
  const place = byId("notices");
  place.querySelector(`[data-key="${key}"]`)?.remove();
  if (parts.length === 0) return;
  const close = make("button", { type: "button", class: "quiet close", "aria-label": "Close this message" }, "×");
  close.addEventListener("click", () => notice(key));
  place.append(make("div", { class: "banner", "data-key": key }, ...parts, close));
  if (place.children.length > 3) place.firstElementChild.remove();
}

// step undoes or does again one step of the whole text.
async function step(which) {
  if (!await live.flush() || !draft[which]()) return;
  text.set(draft.text);
  live.overtake();
  live.soon(true);
}

byId("undo").addEventListener("click", () => step("undo"));
byId("redo").addEventListener("click", () => step("redo"));
document.addEventListener("keydown", (event) => {
  const key = event.key.toLowerCase();
  if (!(event.ctrlKey || event.metaKey) || event.altKey || document.querySelector("dialog[open]") || key !== "z" && key !== "y") return;
  event.preventDefault();
  step(key === "y" || event.shiftKey ? "redo" : "undo");
});
draft.watch(() => {
  byId("undo").disabled = draft.before.length === 0 && draft.changes.length === 0;
  byId("redo").disabled = draft.after.length === 0;
  if (draft.base !== shownMark) form.pictures(shownMark = draft.base);
});

function goToField(path) {
  view("form");
  if (!form.reveal(path)) byId("form").querySelector("input")?.focus();
}

function goToLine(line, column) {
  beside();
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
  const disk = draft.text;
  draft.restore(left);
  text.set(draft.text);
  const drop = make("button", { type: "button" }, "Drop them");
  drop.addEventListener("click", () => { notice("left"); draft.changes = []; text.set(disk); live.typed(disk, true); });
  notice("left", make("span", {}, "Your unsaved changes from before are here again."), drop);
  live.formWanted = true;
}
live.refresh();

// A finding told on another page leads here, to its field or its line.
const place = new URLSearchParams(location.hash.slice(1));
if (place.has("field")) goToField(place.get("field"));
else if (place.has("line")) goToLine(Number(place.get("line")));
