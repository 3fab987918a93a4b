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
    byId("gift").addEventListener("change", changed);
    for (const chip of this.chips) {
      press(chip, chosen.includes(chip.dataset.piece));
      chip.addEventListener("click", () => { this.toggle(chip); changed(); });
    }
  }

  get pieces() { return this.chips.filter(pressed).map((chip) => chip.dataset.piece); }

  get gift() { return byId("gift").checked; }

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
    this.peek(labels);
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
    const svg = picture(label.svg);
    svg.addEventListener("click", (event) => {
      const block = event.target.closest?.("[data-block]");
      const path = block && label.paths[block.dataset.block];
      if (path) this.goTo(path);
    });
    const host = hosted(svg, Math.min(Math.max(label.width * scale, smallest), largest));
    // A long band is scrolled on a telephone rather than shrunk beyond reading.
    host.style.minWidth = label.width > long ? `${label.width * readable}px` : "";
    return make("figure", {}, host, make("figcaption", {}, `${label.title}, ${label.size}, ${plural(label.labels, "label", "labels")} on ${label.sheet}`));
  }

  // peek keeps the first label in sight below the form, on small screens.
  peek(labels) {
    const place = byId("peek");
    place.hidden = labels.length === 0;
    if (labels.length === 0 || this.peeked === labels[0].svg) return;
    this.peeked = labels[0].svg;
    place.replaceChildren(hosted(picture(labels[0].svg), Math.min(340, labels[0].width / labels[0].height * 72)));
  }
}

// Sizes on screen: pixels a millimetre, and limits in pixels.
const [scale, readable, long] = [3.1, 2.3, 120];
const [smallest, largest] = [170, 720];

// picture makes a drawing that fills its place.
function picture(text) {
  const svg = document.importNode(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);
  svg.setAttribute("width", "100%");
  svg.removeAttribute("height");
  svg.style.display = "block";
  return svg;
}

function hosted(svg, width) {
  const host = make("div", { class: "art" });
  host.style.width = `${width}px`;
  host.style.maxWidth = "100%";
  host.attachShadow({ mode: "open" }).append(svg);
  return host;
}

const pressed = (button) => button.getAttribute("aria-pressed") === "true";

const press = (button, on) => button.setAttribute("aria-pressed", String(on));
