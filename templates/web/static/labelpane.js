// The labels as they would be printed. Each stands in a shadow root of its
// own, since drawings share the names of their parts.

import { byId, make, plural } from "./dom.js";

export class LabelPane {
  constructor(first, changed, goTo) {
    this.board = byId("labels");
    this.chips = [...document.querySelectorAll(".chips [data-piece]")];
    this.key = `pieces:${document.querySelector("main").dataset.file}`;
    this.shown = [];
    this.goTo = goTo;
    const chosen = sessionStorage.getItem(this.key)?.split(" ") || [first];
    for (const chip of this.chips) {
      press(chip, chosen.includes(chip.dataset.piece));
      chip.addEventListener("click", () => { this.toggle(chip); changed(); });
    }
  }

  get pieces() { return this.chips.filter(pressed).map((chip) => chip.dataset.piece); }

  get names() { return this.chips.filter(pressed).map((chip) => chip.textContent.toLowerCase()); }

  // toggle keeps at least one piece.
  toggle(chip) {
    press(chip, !pressed(chip) || this.pieces.length === 1);
    sessionStorage.setItem(this.key, this.pieces.join(" "));
  }

  // choose shows a piece that was chosen in the form.
  choose(piece) {
    for (const chip of this.chips) if (chip.dataset.piece === piece) press(chip, true);
  }

  show(labels) {
    if (labels.length === 0) {
      this.shown = [];
      this.board.replaceChildren(make("p", { class: "hush" }, "The labels appear here as soon as the batch can be read and has a jar to label."));
      return;
    }
    const figures = labels.map((label, i) => this.figure(label, this.shown[i]));
    const same = figures.length === this.shown.length && figures.every((figure, i) => figure === this.shown[i]?.figure);
    this.shown = labels.map((label, i) => ({ label, figure: figures[i] }));
    if (!same) this.board.replaceChildren(...figures);
  }

  // figure draws a label; one that has not changed stays as it is.
  figure(label, before) {
    if (before && before.label.svg === label.svg && before.label.labels === label.labels) return before.figure;
    const host = make("div", { class: "art" });
    const svg = document.importNode(new DOMParser().parseFromString(label.svg, "image/svg+xml").documentElement, true);
    const width = parseFloat(svg.getAttribute("width"));
    svg.setAttribute("width", "100%");
    svg.removeAttribute("height");
    svg.style.display = "block";
    host.style.width = `${Math.min(Math.max(width * 3.1, 170), 720)}px`;
    host.style.maxWidth = "100%";
    const root = host.attachShadow({ mode: "open" });
    root.append(svg);
    svg.addEventListener("click", (event) => {
      const block = event.target.closest?.("[data-block]");
      const path = block && label.paths[block.dataset.block];
      if (path) this.goTo(path);
    });
    return make("figure", {}, host, make("figcaption", {}, `${label.title}, ${label.size}, ${plural(label.labels, "label", "labels")} on ${label.sheet}`));
  }
}

const pressed = (button) => button.getAttribute("aria-pressed") === "true";

const press = (button, on) => button.setAttribute("aria-pressed", String(on));
