// The sheets labels are printed on, small: tap the last label that is gone from
// the first sheet, or write how many are.

import { rooted } from "./api.js";
import { byId, make, plural } from "./dom.js";

// sheetsOf shows each label sheet once, with the labels gone from it.
export async function sheetsOf(labels) {
  const sheets = new Map();
  for (const l of labels) if (l.cells > 0 && !sheets.has(l.sheet)) sheets.set(l.sheet, l);
  const figures = await Promise.all([...sheets.values()].map((l) => figure(l)));
  byId("print-sheets").replaceChildren(...figures);
  byId("print-noting").hidden = figures.length === 0;
}

// goneFrom reads how many labels are gone, by sheet; a sheet where what stands
// there is no number is null.
export function goneFrom() {
  const out = {};
  for (const input of byId("print-sheets").querySelectorAll("input")) {
    const text = input.value.trim();
    out[input.dataset.sheet] = /^\d*$/.test(text) ? Number(text) : null;
  }
  return out;
}

async function figure({ sheet, title, cells, gone }) {
  const input = make("input", { id: `gone-${sheet}`, inputmode: "numeric", "data-sheet": sheet, value: String(gone) });
  const label = make("label", { for: input.id }, `${title}: gone from the first sheet`);
  const help = make("p", { class: "help", id: `${input.id}-help` }, `${sheet}, ${plural(cells, "label", "labels")}. Tap the last one that is gone.`);
  input.setAttribute("aria-describedby", help.id);
  const drawing = make("div", { class: "paper", "aria-hidden": "true" });
  const answer = await fetch(rooted(`picture/sheet/${encodeURIComponent(sheet)}`)).catch(() => null);
  if (answer?.ok) drawing.append(document.importNode(new DOMParser().parseFromString(await answer.text(), "image/svg+xml").documentElement, true));
  const places = [...drawing.querySelectorAll("g > *")];
  const shade = () => places.forEach((place, i) => place.classList.toggle("gone", i < Number(input.value)));
  places.forEach((place, i) => place.addEventListener("click", () => {
    input.value = Number(input.value) === i + 1 ? i : i + 1; // tapped again: still there
    shade();
  }));
  input.addEventListener("input", shade);
  shade();
  return make("figure", {}, drawing, make("figcaption", { class: "field" }, label, input, help));
}
